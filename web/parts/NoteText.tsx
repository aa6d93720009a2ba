/** A note's words with numbered marks under what was read, and a dotted line under what was not. */
import { type Marked, pieces } from './marks.ts';

interface Props {
  text: string;
  marked: readonly Marked[];
  /** Number of the entry looked at; its words stand out. */
  active?: number;
}

/** The words as they were said. Marks carry the number of their entry, so that colour is never needed. */
export function NoteText({ text, marked, active }: Props) {
  return (
    <p class="notetext">
      {pieces(text, marked).map((piece) => {
        const read = piece.marks.length > 0 && !piece.unread;
        const looked = active !== undefined && piece.marks.includes(active);
        return (
          <span
            key={piece.start}
            class={[read && 'read', piece.unread && 'unread', looked && 'looked'].filter(Boolean).join(' ')}
          >
            {piece.text}
            {piece.ends.length > 0 && (
              <sup class="number" aria-hidden="true">
                {piece.ends.join(' ')}
              </sup>
            )}
          </span>
        );
      })}
    </p>
  );
}
