/** One entry of the note: a short sentence, how sure it is, and what can be done with it. */
import { useEffect, useRef } from 'preact/hooks';
import type { NoteView } from '../../server/routes/schemas.ts';
import { said, sentence } from '../words.ts';
import type { Desk } from './desk.ts';
import { openForm } from './keys.ts';

type Reviewed = NoteView['entries'][number];
const STATE_WORDS = { accepted: '✓ accepted', removed: '✗ removed' } as const;

interface Props {
  desk: Desk;
  one: Reviewed;
  index: number;
  /** Moves the focus here when it is looked at, as long as no form is open. */
  takesFocus: boolean;
}

export function EntryRow({ desk, one, index, takesFocus }: Props) {
  const looked = desk.looked.value === index;
  const row = useRef<HTMLLIElement>(null);
  const came = useRef(false);
  const { who, what } = said(one.entry);
  const number = index + 1;
  const name = `${number}: ${sentence(one.entry)}`;
  useEffect(() => {
    const here = row.current;
    if (!looked || !takesFocus || !here || here.contains(document.activeElement)) return;
    here.focus({ preventScroll: true });
    // The first look at a note begins at its words; only a later choice brings the entry into view.
    if (came.current) here.scrollIntoView({ block: 'nearest' });
  }, [looked, takesFocus]);
  useEffect(() => {
    came.current = true;
  }, []);
  const doubt = one.state === 'proposed' && one.entry.doubt && one.entry.doubt !== 'none' ? one.entry.doubt : undefined;
  return (
    <li
      ref={row}
      class={`entry ${one.state} ${looked ? 'looked' : ''} ${doubt ? 'doubtful' : ''}`}
      tabIndex={looked ? 0 : -1}
      aria-current={looked ? 'true' : undefined}
      onFocusCapture={() => desk.lookAt(index)}
      onPointerEnter={() => {
        desk.pointed.value = index;
      }}
      onPointerLeave={() => {
        desk.pointed.value = undefined;
      }}
    >
      <span class="no figure" aria-hidden="true">
        {number}
      </span>
      <div class="says">
        <p>
          {who && <strong>{who}</strong>}
          {who && <span class="hush"> · </span>}
          {what}
        </p>
        {doubt && (
          <p class="doubt">
            <b>{doubt === 'much' ? '?? Very unsure' : '? Not sure'}</b>
            {one.entry.because && `: ${one.entry.because}`}
          </p>
        )}
        {one.was && <p class="hush small">was read as: {sentence(one.was)}</p>}
        {one.from === 'person' && <p class="hush small">added by hand</p>}
      </div>
      <div class="acts">
        {one.state !== 'proposed' && <span class="state small">{STATE_WORDS[one.state]}</span>}
        {one.state !== 'accepted' && (
          <button
            type="button"
            class="button tight"
            aria-label={`${one.state === 'removed' ? 'Take it back:' : 'Accept'} ${name}`}
            onClick={() => void desk.accept(index)}
          >
            {one.state === 'removed' ? 'Take it back' : 'Accept'}
          </button>
        )}
        <button
          type="button"
          class="button tight plain"
          aria-label={`Change ${name}`}
          onClick={() => {
            desk.lookAt(index);
            openForm(desk, 'change');
          }}
        >
          Change
        </button>
        {one.state !== 'removed' && (
          <button
            type="button"
            class="button tight plain"
            aria-label={`Remove ${name}`}
            onClick={() => void desk.remove(index)}
          >
            Remove
          </button>
        )}
      </div>
    </li>
  );
}
