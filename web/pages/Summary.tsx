/** A season at a glance, made to be printed: runs, each dog's distance and places, findings. */
import { useLocation } from 'preact-iso';
import type { Summary as SummaryData } from '../../server/report/schema.ts';
import { getSummary } from '../api-taking.ts';
import { counted, valueWord } from '../labels.ts';
import { DogLink } from '../parts/DogLink.tsx';
import { dayShort, Facts, FinePrint, PrintButton, Rows } from '../parts/Paper.tsx';
import { Head, Waiting, Wrong } from '../parts/Told.tsx';
import { dayWords, monthWords } from '../times.ts';
import { distanceFigure, distanceUnit, distanceWords, temperatureWords } from '../units.ts';
import { useFetched } from '../use.ts';
import { minutesWords } from '../words.ts';

const STATES = { open: 'open', over: 'told over', 'not-seen-since': 'not seen since' } as const;
const POSITIONS = ['lead', 'swing', 'team', 'wheel'] as const;

export function Summary() {
  const { query } = useLocation();
  const { data, trouble, loading, reload } = useFetched(() => getSummary(query.season), [query.season]);
  return (
    <div class="stack">
      {!data && <Head title="Season" />}
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      {!data && loading && <Waiting what="the season" />}
      {data && <Filled summary={data} />}
    </div>
  );
}

function Filled({ summary }: { summary: SummaryData }) {
  const { units } = summary;
  const far = (metres: number) => (metres > 0 ? distanceFigure(metres, units) : '–');
  const known = (metres: number | undefined) => (metres === undefined ? 'not known' : distanceFigure(metres, units));
  const unit = distanceUnit(units);
  return (
    <>
      <Head
        title={`Season ${summary.season}`}
        folio={`${summary.kennel ? `${summary.kennel} · ` : ''}up to ${dayWords(summary.on, true)}`}
      />
      <PrintButton />
      <article class="sheet">
        <Facts
          of={[
            ['Runs', summary.runs.length],
            ['Days with a run', summary.days],
            ['Distance of the teams', distanceWords(summary.metres, units)],
            ['Time out', summary.minutes > 0 ? minutesWords(summary.minutes) : undefined],
            ['Findings begun', summary.episodes.length],
            ['Notes', summary.notes.all],
          ]}
        />
        {summary.notes.waiting > 0 && (
          <p>
            {counted(summary.notes.waiting, 'note still waits', 'notes still wait')} for review, and counts for nothing.
          </p>
        )}
        {summary.runsWithoutDistance > 0 && (
          <p>
            Of {counted(summary.runsWithoutDistance, 'run')} the distance is not known; the sums are the least that was
            run.
          </p>
        )}
        <Rows
          title="Dogs"
          rows={summary.dogs}
          keyOf={(one) => one.dog}
          none="There is no dog yet."
          columns={[
            [
              'Dog',
              (one) => (
                <>
                  <DogLink name={one.dog} />
                  {one.retired && ' (retired)'}
                </>
              ),
            ],
            ['Runs', (one) => one.shares.runs, 'right'],
            [`Distance, ${unit}`, (one) => far(one.shares.metres), 'right'],
            [`Longest, ${unit}`, (one) => far(one.longest), 'right'],
            ...POSITIONS.map(
              (position) =>
                [
                  `${position}, ${unit}`,
                  (one: SummaryData['dogs'][number]) => far(one.shares.byPosition[position]?.metres ?? 0),
                  'right',
                ] as const,
            ),
            ['Findings', (one) => one.episodes || '–', 'right'],
            ['Open', (one) => one.open || '–', 'right'],
            ['Last run', (one) => (one.lastRun ? dayShort(one.lastRun) : '–')],
          ]}
        />
        <Rows
          title="Months"
          rows={summary.months}
          keyOf={(one) => one.month}
          none="No run yet."
          columns={[
            ['Month', (one) => monthWords(one.month)],
            ['Runs', (one) => one.runs, 'right'],
            ['Days', (one) => one.days, 'right'],
            [`Distance, ${unit}`, (one) => far(one.metres), 'right'],
          ]}
        />
        <Rows
          title="Findings"
          rows={summary.episodes}
          keyOf={(one) => one.id}
          none="No finding was told."
          columns={[
            ['Dog', (one) => <DogLink name={one.dog} />],
            ['Where', (one) => one.site.label],
            ['What', (one) => one.signs.map(({ sign }) => valueWord('finding', 'sign', sign)).join(', ')],
            ['From', (one) => dayShort(one.from)],
            ['Last seen', (one) => dayShort(one.lastSeen)],
            ['State', (one) => `${one.doubtful ? 'maybe, ' : ''}${STATES[one.state]}`],
            ['Time this season', (one) => one.number ?? '', 'right'],
          ]}
        />
        <Rows
          title="Runs"
          rows={summary.runs}
          keyOf={(run) => run.id}
          none="No run yet."
          columns={[
            ['Day', (run) => dayShort(run.day)],
            ['Driver', (run) => run.driver ?? ''],
            [`Distance, ${unit}`, (run) => known(run.metres), 'right'],
            ['Time', (run) => (run.minutes === undefined ? '–' : minutesWords(run.minutes)), 'right'],
            ['Dogs', (run) => run.dogs, 'right'],
            ['Trail', (run) => run.surfaces.join(', ')],
            ['Air', (run) => (run.celsius === undefined ? '' : temperatureWords(run.celsius, units)), 'right'],
          ]}
        />
        <FinePrint about={summary.about} />
      </article>
    </>
  );
}
