/** What keeps coming back: each site told more than once, each time with what lies between and what the dog did before. */
import type { Episode, Watched } from '../api.ts';
import { counted, valueWord } from '../labels.ts';
import { units } from '../status.ts';
import { dayWords } from '../times.ts';
import { distanceWords } from '../units.ts';
import { signsWords, stateWords } from './words.ts';

type Shares = Episode['onset']['week'];

export function ComesBack({ watch }: { watch: Watched }) {
  const bySite = new Map<string, Episode[]>();
  for (const episode of [...watch.episodes].sort((a, b) => (a.from < b.from ? -1 : 1))) {
    const key = `${episode.dog}|${episode.site.key}`;
    bySite.set(key, [...(bySite.get(key) ?? []), episode]);
  }
  const again = [...bySite.values()]
    .filter((times) => times.some(({ sinceBefore }) => sinceBefore))
    .sort((a, b) => openFirst(a, b) || b.length - a.length || (lastOf(b).lastSeen < lastOf(a).lastSeen ? -1 : 1));
  return (
    <section class="section stack" aria-labelledby="comesback">
      <h2 id="comesback">What keeps coming back</h2>
      {again.length === 0 && <p class="hush">Nothing was found twice in the same place this season.</p>}
      <div>
        {again.map((times) => (
          <Times key={times[0]?.id} times={times} on={watch.on} />
        ))}
      </div>
      <TakenForAnother watch={watch} />
      <p class="small hush">{watch.about.episodes}</p>
      {again.length > 0 && <p class="small hush">{watch.about.onset}</p>}
    </section>
  );
}

const openFirst = (a: readonly Episode[], b: readonly Episode[]) =>
  Number(lastOf(b).state === 'open') - Number(lastOf(a).state === 'open');
const lastOf = (times: readonly Episode[]) => times[times.length - 1] as Episode;

function Times({ times, on }: { times: readonly Episode[]; on: string }) {
  const last = lastOf(times);
  const name = `${last.dog}, ${last.site.label}`;
  const u = units.value;
  const far = (metres: number | undefined) => (metres === undefined ? '–' : distanceWords(metres, u));
  return (
    <details class="adding recurs" open={last.state === 'open'}>
      <summary>
        <h3>
          {last.dog} · {last.site.label}{' '}
          <span class="hush">
            {counted(times.length, 'time')}, last from {dayWords(last.from)}, {stateWords(last, on)}
          </span>
        </h3>
      </summary>
      <p class="small">
        <a href={`/dogs/${last.dogId}`}>{last.dog}’s own page</a>
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways has to be reached by the keyboard. */}
      <section class="scrolls" tabIndex={0} aria-label={`${name}, each time, as a table`}>
        <table class="table plain">
          <thead>
            <tr>
              <th scope="col">From</th>
              <th scope="col">What</th>
              <th scope="col">State</th>
              <th scope="col">Since the one before</th>
              <th scope="col">7 days before</th>
              <th scope="col">its usual 7 days</th>
              <th scope="col">Position, that week (season)</th>
              <th scope="col">Trail</th>
              <th scope="col">Booties on</th>
            </tr>
          </thead>
          <tbody>
            {times.map((one) => {
              const { week, usual, metres7, daysOfRecord } = one.onset;
              const beside = (key: Key) => besideWords(week, usual.season, key);
              return (
                <tr key={one.id}>
                  <th scope="row">
                    <a href={`/review/${one.seen[0]?.note}`}>{dayWords(one.from)}</a>
                  </th>
                  <td>{signsWords(one)}</td>
                  <td>{stateWords(one, on)}</td>
                  <td>
                    {one.sinceBefore
                      ? `${counted(one.sinceBefore.days, 'day')}, ${counted(one.sinceBefore.runs, 'run')}, ${far(one.sinceBefore.metres)}`
                      : 'the first'}
                  </td>
                  <td class="figure">
                    {far(metres7)}
                    {daysOfRecord < 7 && <span class="under hush">{counted(daysOfRecord, 'day')} of record</span>}
                  </td>
                  <td class="figure">{far(usual.metres7)}</td>
                  <td>{beside('byPosition')}</td>
                  <td>{beside('bySurface')}</td>
                  <td>{beside('byBooties')}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
    </details>
  );
}

type Key = 'byPosition' | 'bySurface' | 'byBooties';
/** "wheel 80 % (34 %)": the largest shares of that week, in brackets the same in the whole season. */
function besideWords(week: Shares, season: Shares, key: Key): string {
  const mine = week[key] as Record<string, { share?: number } | undefined>;
  const usual = season[key] as typeof mine;
  const percent = (share: number | undefined) => `${Math.round((share ?? 0) * 100)} %`;
  const keys = Object.keys(mine)
    .filter((one) => one !== 'unknown' && (key !== 'byBooties' || one === 'on'))
    .sort((a, b) => (mine[b]?.share ?? 0) - (mine[a]?.share ?? 0))
    .slice(0, 2);
  if (keys.length === 0) return key === 'byBooties' && mine.off ? `0 % (${percent(usual.on?.share)})` : '–';
  return keys
    .map((one) => {
      const name = key === 'byBooties' ? '' : `${key === 'bySurface' ? valueWord('trail', 'surface', one) : one} `;
      return `${name}${percent(mine[one]?.share)} (${percent(usual[one]?.share)})`;
    })
    .join(', ');
}

/** Sites of one front limb side by side, as they are easily taken for one another. */
function TakenForAnother({ watch }: { watch: Watched }) {
  const by = new Map(watch.episodes.map((episode) => [episode.id, episode]));
  const groups = watch.together.filter(({ season }) => season === watch.season);
  if (groups.length === 0) return null;
  const words = (ids: readonly string[]) => {
    const sites = new Map<string, number>();
    for (const id of ids) {
      const label = by.get(id)?.site.label;
      if (label) sites.set(label, (sites.get(label) ?? 0) + 1);
    }
    return [...sites].map(([label, n]) => (n > 1 ? `${label}, ${counted(n, 'time')}` : label)).join('; ');
  };
  return (
    <div class="stack">
      <h3>Sites that are easily taken for one another</h3>
      <ul class="sayings">
        {groups.map((group) => (
          <li key={`${group.dog} ${group.side}`}>
            <strong>{group.dog}</strong>,{' '}
            {group.side === 'not-said' ? 'front limb, side not said' : `${group.side} front limb`}:{' '}
            {[words(group.episodes), group.perhaps.length > 0 && `perhaps ${words(group.perhaps)}`]
              .filter(Boolean)
              .join('; ')}
          </li>
        ))}
      </ul>
      <p class="small hush">{watch.about.together}</p>
    </div>
  );
}
