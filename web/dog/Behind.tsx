/** What stands behind a picture: its table, laid out when it is first opened. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

interface Props {
  name: string;
  /** What tells it from others of the same name, for those who hear the page. */
  of?: string;
  children: () => ComponentChildren;
}

export function Behind({ name, of, children }: Props) {
  const [opened, setOpened] = useState(false);
  return (
    <details class="behind" onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>
        {name}
        {of && <span class="unseen">: {of}</span>}
      </summary>
      {opened && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard.
        <section class="wide" tabIndex={0} aria-label={of ? `${name}: ${of}` : name}>
          {children()}
        </section>
      )}
    </details>
  );
}
