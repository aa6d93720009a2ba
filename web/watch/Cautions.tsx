/** Signs at which one stops and calls a veterinarian: a notice in words with a heavy border, whatever else is on the page. */
import type { ComponentChildren } from 'preact';
import { ABOUT_CAUTIONS } from '../../grammar/cautions.ts';
import type { Caution } from '../api.ts';
import { counted } from '../labels.ts';
import { dayWords } from '../times.ts';

interface NoticeProps {
  says: readonly { key: string; says: string; more?: ComponentChildren }[];
  children?: ComponentChildren;
}
function CautionNotice({ says, children }: NoticeProps) {
  return (
    <section class="caution" aria-label="Stop and call a veterinarian">
      <ul class="sayings">
        {says.map((one) => (
          <li key={one.key}>
            <strong>{one.says}</strong> {one.more && <span class="more">{one.more}</span>}
          </li>
        ))}
      </ul>
      {children}
      <p class="small">{ABOUT_CAUTIONS}</p>
    </section>
  );
}

/** What the words of one note raise by themselves. Announced at once where it has only now appeared. */
export function NoteCautions({ alarms, fresh }: { alarms: readonly { says: string }[]; fresh: boolean }) {
  // The alert has to be there before its words are: only then is it read out when they come.
  return (
    <div role={fresh ? 'alert' : undefined}>
      {alarms.length > 0 && <CautionNotice says={alarms.map(({ says }) => ({ key: says, says }))} />}
    </div>
  );
}

/** What was reviewed and still stands, with the day it was told and the note. */
export function StandingCautions({ cautions }: { cautions: readonly Caution[] }) {
  if (cautions.length === 0) return null;
  return (
    <CautionNotice
      says={cautions.map((one) => ({
        key: one.id + one.reason,
        says: one.says,
        more: (
          <>
            Told {dayWords(one.last)}
            {one.times > 1 && `, ${counted(one.times, 'time')} since ${dayWords(one.first)}`} —{' '}
            <a href={`/review/${one.note}`}>the note</a>
          </>
        ),
      }))}
    />
  );
}
