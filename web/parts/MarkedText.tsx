/** A note's words with some of them marked; spans in order, none overlapping, UTF-16 units. */
import { Fragment } from 'preact';

export function MarkedText({ text, marks }: { text: string; marks: readonly (readonly [number, number])[] }) {
  let at = 0;
  const pieces = marks.map(([a, b]) => {
    const before = text.slice(at, a);
    at = b;
    return (
      <Fragment key={a}>
        {before}
        <mark>{text.slice(a, b)}</mark>
      </Fragment>
    );
  });
  return (
    <>
      {pieces}
      {text.slice(at)}
    </>
  );
}
