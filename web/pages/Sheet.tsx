/** A dog's health sheet: records for its veterinarian, made to be printed. Nothing is concluded here. */
import { useLocation } from 'preact-iso';
import type { Sheet as SheetData } from '../../server/report/schema.ts';
import { getSheet } from '../api-taking.ts';
import { ASSERTION_WORDS, counted, valueWord } from '../labels.ts';
import { dayShort, Facts, FinePrint, PrintButton, Rows } from '../parts/Paper.tsx';
import { Head, Waiting, Wrong } from '../parts/Told.tsx';
import { ageWords, dayWords } from '../times.ts';
import { distanceWords, temperatureWords } from '../units.ts';
import { useFetched } from '../use.ts';
import { figure, minutesWords, placeWords } from '../words.ts';

const STATES = { open: 'open', over: 'told over', 'not-seen-since': 'not seen since' } as const;
type Episode = SheetData['episodes'][number];

export function Sheet({ id }: { id: string }) {
  const { query } = useLocation();
  const { data, trouble, loading, reload } = useFetched(() => getSheet(id, query.season), [id, query.season]);
  return (
    <div class="stack">
      {!data && <Head title="Health sheet" />}
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      {!data && loading && <Waiting what="the sheet" />}
      {data && <Filled sheet={data} />}
    </div>
  );
}

function Filled({ sheet }: { sheet: SheetData }) {
  const { dog, units, load } = sheet;
  const far = (metres: number | undefined) => (metres === undefined ? '–' : distanceWords(metres, units));
  const standing = sheet.cautions.filter((caution) => caution.standing);
  return (
    <>
      <Head
        title={dog.name}
        folio={`${sheet.kennel ? `${sheet.kennel} · ` : ''}health sheet, season ${sheet.season}, up to ${dayWords(sheet.on, true)}`}
      />
      <p class="no-print">
        <a href={`/dogs/${dog.id}?season=${sheet.season}`}>{dog.name}’s own page, with its season as a picture</a>
      </p>
      <PrintButton />
      <article class="sheet">
        <p>For your veterinarian: what was said and seen of {dog.name}, in the words it was kept in. No diagnosis.</p>
        {standing.length > 0 && (
          <div class="told accent">
            {standing.map((caution) => (
              <p key={caution.id}>
                {caution.says} ({dayShort(caution.last)})
              </p>
            ))}
          </div>
        )}
        <Facts
          of={[
            ['Sex', dog.sex === 'F' ? 'female' : 'male'],
            ['Born', dog.born && `${dayShort(dog.born)} (${ageWords(dog.born, sheet.on)})`],
            ['Other names', [...dog.aliases, ...dog.formerNames].join(', ')],
            ['Last 7 days', far(load.metres7)],
            ['Last 28 days', far(load.metres28)],
            ['Season', `${far(load.season.metres)}, ${counted(load.season.runs, 'run')}`],
            ['Days since last run', load.daysSinceLastRun],
            ['Last weight', lastOf(sheet, 'weight')],
            ['Body condition', lastOf(sheet, 'body-condition')],
          ]}
        />
        <Rows<Episode>
          title="Findings, open ones first"
          rows={sheet.episodes}
          keyOf={(episode) => episode.id}
          none="No finding was told of this dog."
          columns={[
            ['Where', (episode) => episode.site.label],
            ['What', (episode) => signsOf(episode)],
            ['From', (episode) => dayShort(episode.from)],
            ['Last seen', (episode) => dayShort(episode.lastSeen)],
            ['State', (episode) => stateOf(episode)],
            ['Since the one before', (episode) => sinceOf(episode, far)],
            ['7 days before', (episode) => far(episode.onset.metres7), 'right'],
          ]}
        />
        <Rows
          title="Weight and other measures"
          rows={sheet.measures}
          keyOf={(one, n) => `${one.at}${n}`}
          none="Nothing was measured this season."
          columns={[
            ['Day', (one) => dayShort(one.day)],
            ['Measured', (one) => valueWord('measure', 'quantity', one.quantity)],
            ['Value', (one) => measured(one) + doubt(one.assertion), 'right'],
          ]}
        />
        <Rows
          title="Food and water not taken whole"
          rows={sheet.offFood}
          keyOf={(one, n) => `${one.at}${n}`}
          none={
            sheet.intakeTold > 0
              ? `It was told to have taken all of it, all ${counted(sheet.intakeTold, 'time')}.`
              : 'Nothing was told of its eating and drinking.'
          }
          columns={[
            ['Day', (one) => dayShort(one.day)],
            ['What', (one) => [one.what, one.item].filter(Boolean).join(', ')],
            ['Took', (one) => valueWord('intake', 'took', one.took) + doubt(one.assertion)],
          ]}
        />
        <Rows
          title="Care"
          rows={sheet.care}
          keyOf={(one, n) => `${one.at}${n}`}
          none="No care was told of."
          columns={[
            ['Day', (one) => dayShort(one.day)],
            ['What', (one) => valueWord('care', 'act', one.act) + doubt(one.assertion)],
            ['Where', (one) => placeWords(one)],
            ['With', (one) => one.item ?? ''],
          ]}
        />
        <Rows
          title={
            sheet.runsInSeason > sheet.runs.length
              ? `Last ${sheet.runs.length} of ${sheet.runsInSeason} runs`
              : 'Runs of the season'
          }
          rows={sheet.runs}
          keyOf={(run) => run.id}
          none="No run this season."
          columns={[
            ['Day', (run) => dayShort(run.day)],
            ['Distance', (run) => far(run.metres), 'right'],
            ['Time', (run) => (run.minutes === undefined ? '–' : minutesWords(run.minutes)), 'right'],
            ['Place', (run) => [run.position, run.side].filter(Boolean).join(', ') || '–'],
            ['Trail', (run) => run.surfaces.join(', ') || '–'],
            ['Air', (run) => (run.celsius === undefined ? '–' : temperatureWords(run.celsius, units)), 'right'],
            ['Left the team', (run) => (run.left ? valueWord('drop', 'manner', run.left) : '')],
          ]}
        />
        <FinePrint about={sheet.about} />
      </article>
    </>
  );
}

const doubt = (assertion: keyof typeof ASSERTION_WORDS | undefined) =>
  assertion === undefined || assertion === 'present' ? '' : ` (${ASSERTION_WORDS[assertion]})`;

/** Body condition always with its nine. */
function measured({ quantity, value, unit }: SheetData['measures'][number]): string {
  if (quantity === 'body-condition') return `${figure(value)}/9`;
  return [figure(value), unit === 'F' || unit === 'C' ? `°${unit}` : unit].filter(Boolean).join(' ');
}

function lastOf(sheet: SheetData, quantity: SheetData['measures'][number]['quantity']): string | undefined {
  const last = sheet.measures.findLast((one) => one.quantity === quantity);
  return last && `${measured(last)}, ${dayShort(last.day)}`;
}

function signsOf(episode: Episode): string {
  return episode.signs
    .map(({ sign, worst, trend, gone }) =>
      [
        valueWord('finding', 'sign', sign),
        [worst, trend === 'same' ? 'no change' : trend, gone && `gone ${dayShort(gone)}`].filter(Boolean).join(', '),
      ]
        .filter(Boolean)
        .join(', '),
    )
    .join('; ');
}

function stateOf(episode: Episode): string {
  const until = episode.state === 'over' && episode.until ? ` ${dayShort(episode.until)}` : '';
  return `${episode.doubtful ? 'maybe, ' : ''}${STATES[episode.state]}${until}`;
}

function sinceOf({ number, sinceBefore }: Episode, far: (metres: number) => string): string {
  if (!sinceBefore) return number === undefined ? '' : 'the first';
  const time = number !== undefined && number > 1 ? `no. ${number} this season, ` : '';
  return `${time}${counted(sinceBefore.days, 'day')}, ${counted(sinceBefore.runs, 'run')}, ${far(sinceBefore.metres)}`;
}
