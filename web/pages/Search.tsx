/** Search: what was understood, what was found on a time line, and the notes it stands in. */

import { useEffect, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { Query } from '../../server/search/query.ts';
import { getDogs, type SearchAsked, search } from '../api.ts';
import { counted } from '../labels.ts';
import { Empty, Head, Notice, Waiting, Wrong } from '../parts/Told.tsx';
import { addressOf, addressOfWords, askedIn } from '../search/address.ts';
import { CameBack, FoundNotes, TimeLine } from '../search/Found.tsx';
import { type Answer, ChangeForm, Chips } from '../search/Parts.tsx';
import { status, units } from '../status.ts';
import { useFetched } from '../use.ts';

const EXAMPLES = [
  'sore wrist',
  'who lost booties on ice in january',
  'left front splits since the new year',
  'refused snack last month',
  'temp over 103',
  'in wheel this week',
];
const PAGE = 100;
const MOST = 500;
/** While the index is being built, the answer is asked for again. */
const AGAIN_MS = 1_000;

export function Search() {
  const { url, route } = useLocation();
  const asked = askedIn(url);
  const any = Object.keys(asked).length > 0;
  const [limit, setLimit] = useState(PAGE);
  const { data, trouble, loading, reload } = useFetched(
    async () => (any ? await search({ ...asked, limit: String(limit) } as SearchAsked) : undefined),
    [url, limit],
  );
  useEffect(() => setLimit(PAGE), [url]);
  const building = data !== undefined && data.index.notes < data.index.of;
  useEffect(() => {
    if (!building) return;
    const timer = setTimeout(() => void reload(), AGAIN_MS);
    return () => clearTimeout(timer);
  }, [data, building]);
  const go = (query: Query) => route(addressOf(query));
  const answer = any ? data : undefined;
  return (
    <div class="stack search">
      <Head title="Search" folio={answer && countWords(answer)} />
      <Box q={typeof asked.q === 'string' ? asked.q : ''} key={url} go={(q) => route(addressOfWords(q))} />
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      {!any && <Examples />}
      {any && !answer && loading && <Waiting what="what was found" />}
      {answer && (
        <>
          <Understood answer={answer} go={go} />
          {building && (
            <Notice>
              The notes are still being laid out for searching: {answer.index.notes} of {answer.index.of} so far. More
              may be found in a moment.
            </Notice>
          )}
          <Found answer={answer} />
          {limit < MOST && Math.max(answer.hitsInAll, answer.notesInAll) > limit && (
            <p>
              <button type="button" class="button" onClick={() => setLimit(Math.min(MOST, limit + PAGE))}>
                Show more
              </button>
            </p>
          )}
        </>
      )}
    </div>
  );
}

function countWords({ hitsInAll, notesInAll }: Answer): string {
  if (hitsInAll === 0) return counted(notesInAll, 'note');
  return `${counted(hitsInAll, 'entry', 'entries')} in ${counted(notesInAll, 'note')}`;
}

function Box({ q, go }: { q: string; go: (q: string) => void }) {
  return (
    <search>
      <form
        class="searchbox"
        onSubmit={(event) => {
          event.preventDefault();
          go(String(new FormData(event.currentTarget).get('q') ?? ''));
        }}
      >
        <div class="field">
          <label for="q">Dog, part, sign, food, trail, days, or any words</label>
          <input
            id="q"
            name="q"
            type="search"
            defaultValue={q}
            maxLength={300}
            autocomplete="off"
            enterkeyhint="search"
          />
        </div>
        <button type="submit" class="button first">
          Search
        </button>
      </form>
    </search>
  );
}

function Examples() {
  return (
    <Empty title="Ask as you would speak">
      <p>The words are read as a note is. For example:</p>
      <ul class="examples">
        {EXAMPLES.map((q) => (
          <li key={q}>
            <a href={addressOfWords(q)}>{q}</a>
          </li>
        ))}
      </ul>
    </Empty>
  );
}

/** What the query was read as, and what was made of it. */
function Understood({ answer, go }: { answer: Answer; go: (query: Query) => void }) {
  const { data: dogs } = useFetched(getDogs, []);
  const names = (dogs ?? []).map((dog) => dog.name).sort((a, b) => a.localeCompare(b, 'en'));
  return (
    <section class="stack" aria-label="Understood as">
      <p role="status">
        Understood: <strong>{answer.understood}</strong>
      </p>
      {answer.slips.map(({ said, as }) => (
        <p key={said} class="small">
          “{said}” was read as {as}.
        </p>
      ))}
      {answer.leftOut && (
        <p class="told">No note with all this has the words “{answer.leftOut}”; what follows is without them.</p>
      )}
      <Chips answer={answer} go={go} />
      <SortedOut answer={answer} go={go} />
      <ChangeForm query={answer.query} dogs={names} seasons={status.value?.seasons ?? []} go={go} />
    </section>
  );
}

function SortedOut({ answer: { query, sortedOut }, go }: { answer: Answer; go: (query: Query) => void }) {
  const shown = query.show ?? 'so';
  if (shown === 'so' && sortedOut === 0) return null;
  return (
    <p class="row">
      <span>
        {shown === 'so' &&
          `${counted(sortedOut, 'entry', 'entries')} told as absent or over ${sortedOut === 1 ? 'is' : 'are'} left out.`}
        {shown === 'all' && 'What was told as absent or over is shown too.'}
        {shown === 'not' && 'Only what was told as absent or over is shown.'}
      </span>
      <button
        type="button"
        class="button tight"
        onClick={() => go({ ...query, show: shown === 'so' ? 'all' : undefined })}
      >
        {shown === 'so' ? 'Show them too' : 'Show what was told to be so'}
      </button>
    </p>
  );
}

function Found({ answer }: { answer: Answer }) {
  const u = units.value;
  const { hits, notes, dogs, query } = answer;
  if (hits.length === 0 && notes.length === 0)
    return (
      <Empty title="Nothing found">
        <p>Leave out a part above, or ask for more days. Words are found in any note, reviewed or not.</p>
      </Empty>
    );
  return (
    <>
      {dogs.length > 1 && (
        <section class="stack" aria-labelledby="bydog">
          <h2 id="bydog">By dog</h2>
          <ul class="bydog">
            {dogs.map(({ value, hits: n }) => (
              <li key={value}>
                <a href={addressOf({ ...query, dogs: [value] })}>{value}</a> <span class="figure">{n}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <CameBack answer={answer} units={u} />
      {hits.length > 0 && (
        <section class="stack" aria-labelledby="line">
          <h2 id="line">Time line</h2>
          <TimeLine answer={answer} units={u} />
          <p class="small hush">
            Between two entries, and between two times: the dog’s own runs from reviewed notes, those of the two days
            themselves not counted.
          </p>
        </section>
      )}
      <section class="stack" aria-labelledby="notes">
        <h2 id="notes">Notes</h2>
        <FoundNotes notes={notes} />
      </section>
    </>
  );
}
