/** A dog's own page: what is open, its season as a picture, where things were found, appetite, weight, places, notes. */
import { useLocation } from 'preact-iso';
import type { DogSeason } from '../../server/dog/index.ts';
import { getDogSeason } from '../api.ts';
import { AppetitePicture, Measures } from '../dog/Body.tsx';
import { BodyFigure } from '../dog/BodyFigure.tsx';
import { DogNotes } from '../dog/DogNotes.tsx';
import { spanOf } from '../dog/days.ts';
import { Findings } from '../dog/Findings.tsx';
import { Places, SeasonPicture } from '../dog/SeasonPicture.tsx';
import { stateWords, timeWords } from '../dog/words.ts';
import { counted } from '../labels.ts';
import { Empty, Head, Waiting, Wrong } from '../parts/Told.tsx';
import { units } from '../status.ts';
import { ageWords, dayWords } from '../times.ts';
import { distanceFigure, distanceUnit, type Units } from '../units.ts';
import { useFetched } from '../use.ts';
import { StandingCautions } from '../watch/Cautions.tsx';
import { signsWords, standingOf } from '../watch/words.ts';
import { figure } from '../words.ts';

type Answer = Awaited<ReturnType<typeof getDogSeason>>;

export function Dog({ id }: { id: string }) {
  const { query, route } = useLocation();
  const { data, trouble, loading, reload } = useFetched(() => getDogSeason(id, query.season), [id, query.season]);
  return (
    <div class="stack dogpage">
      {!data && <Head title="Dog" />}
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      {!data && loading && <Waiting what="the dog’s season" />}
      {data && <Filled answer={data} go={(season) => route(`/dogs/${id}?season=${season}`)} />}
    </div>
  );
}

function Filled({ answer, go }: { answer: Answer; go: (season: string) => void }) {
  const { story, about } = answer;
  const { dog, load } = story;
  const u = units.value;
  const span = spanOf(story);
  const since = load.daysSinceLastRun;
  return (
    <>
      <Head
        title={dog.name}
        folio={[
          dog.sex === 'F' ? 'female' : 'male',
          dog.born && ageWords(dog.born, story.on),
          dog.retired && 'retired',
          `season ${story.season}, up to ${dayWords(story.on, true)}`,
        ]
          .filter(Boolean)
          .join(' · ')}
      />
      <SeasonPicker answer={answer} go={go} />
      <StandingCautions cautions={standingOf(story.cautions.map((one) => ({ ...one, dogId: dog.id })))} />
      <OpenNow story={story} units={u} />
      {!span && (
        <Empty title={`Nothing told of ${dog.name} in ${story.season}`}>
          <p>Say where it stands in the team in a note and review it; or choose another season above.</p>
          <a class="button" href="/">
            Speak a note
          </a>
        </Empty>
      )}
      {span && (
        <>
          <Figures story={story} units={u} since={since} />
          <SeasonPicture key={story.season} {...{ story, span }} units={u} />
          <div class="dogside">
            <BodyFigure story={story} about={about.together} />
            <Places shares={load.season} units={u} about={about.surfaces} />
          </div>
          <Findings story={story} units={u} about={about} />
          <EarlierCautions story={story} />
          <AppetitePicture {...{ story, span }} />
          <Measures {...{ story, span }} units={u} />
          {load.coupled !== undefined && <p class="small hush">“7 days to 28”: {about.ratio}</p>}
        </>
      )}
      {story.notes.length > 0 && <DogNotes key={story.season} story={story} />}
    </>
  );
}

function SeasonPicker({ answer: { story, seasons }, go }: { answer: Answer; go: (season: string) => void }) {
  const names = [...new Set([...seasons, story.season])].sort().reverse();
  return (
    <div class="row no-print">
      <div class="field">
        <label for="whichseason">Season</label>
        <select id="whichseason" value={story.season} onChange={(event) => go(event.currentTarget.value)}>
          {names.map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <a class="button" href={`/dogs/${story.dog.id}/sheet?season=${story.season}`}>
        Health sheet
      </a>
      <button type="button" class="button" onClick={() => window.print()}>
        Print this page
      </button>
    </div>
  );
}

/** What is open, before anything else. */
function OpenNow({ story, units: u }: { story: DogSeason; units: Units }) {
  const open = story.episodes.filter((one) => one.state === 'open');
  if (open.length === 0) return null;
  return (
    <section class="opennow stack" aria-labelledby="open">
      <h2 id="open">Open now</h2>
      <ul class="sayings">
        {open.map((one) => (
          <li key={one.id}>
            <strong>
              {one.doubtful && 'maybe '}
              {one.site.label}
            </strong>{' '}
            · {signsWords(one)} · {stateWords(one)}
            {one.number !== undefined && one.number > 1 && ` · ${timeWords(one, u)}`}{' '}
            <a href={`/review/${one.seen.at(-1)?.note}`}>the note</a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Figures({ story: { load }, units: u, since }: { story: DogSeason; units: Units; since?: number }) {
  const unit = <small>{distanceUnit(u)}</small>;
  return (
    <dl class="bigfigures">
      <div>
        <dt>Days since last run</dt>
        <dd class="figure">{since ?? '–'}</dd>
        <dd class="small hush">{load.lastRun ? dayWords(load.lastRun) : 'no run yet'}</dd>
      </div>
      <div>
        <dt>7 days</dt>
        <dd class="figure">
          {distanceFigure(load.metres7, u)} {unit}
        </dd>
        <dd class="small hush">{counted(load.runs7, 'run')}</dd>
      </div>
      <div>
        <dt>Mean week of 28 days</dt>
        <dd class="figure">
          {load.meanWeek28 === undefined ? (
            '–'
          ) : (
            <>
              {distanceFigure(load.meanWeek28, u)} {unit}
            </>
          )}
        </dd>
        <dd class="small hush">
          {load.tooShort
            ? `${load.daysOfRecord} of 28 days of record`
            : load.coupled !== undefined && `7 days to 28: ${figure(load.coupled)}×`}
        </dd>
      </div>
      <div>
        <dt>Season</dt>
        <dd class="figure">
          {distanceFigure(load.season.metres, u)} {unit}
        </dd>
        <dd class="small hush">
          {counted(load.season.runs, 'run')}
          {load.season.runsWithoutDistance > 0 && `, ${load.season.runsWithoutDistance} without a distance`}
        </dd>
      </div>
    </dl>
  );
}

/** Notices of the season that no longer stand; kept in sight, for a veterinarian asks after them. */
function EarlierCautions({ story }: { story: DogSeason }) {
  // The same words of the same day, told of two sites, are one notice here.
  const over = [
    ...new Map(story.cautions.filter((one) => !one.standing).map((one) => [`${one.last} ${one.says}`, one])).values(),
  ];
  if (over.length === 0) return null;
  return (
    <section class="section stack" aria-labelledby="notices">
      <h2 id="notices">Notices earlier this season</h2>
      <ul class="sayings">
        {over.map((one) => (
          <li key={one.id + one.reason}>
            {dayWords(one.last)}: {one.says} <a href={`/review/${one.note}`}>the note</a>
          </li>
        ))}
      </ul>
    </section>
  );
}
