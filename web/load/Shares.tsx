/** How each dog's distance was made up: by position, side, trail, temperature or booties, in four weeks or the season. */
import { useState } from 'preact/hooks';
import { valueWord } from '../labels.ts';
import { type Column, SortTable } from '../parts/SortTable.tsx';
import { units } from '../status.ts';
import { distanceFigure, distanceUnit } from '../units.ts';
import type { DogLoad, LoadAnswer } from './columns.tsx';
import { DogName } from './DogName.tsx';

const KINDS = [
  { key: 'byPosition', name: 'position', order: ['lead', 'swing', 'team', 'wheel'] },
  { key: 'bySide', name: 'side', order: ['left', 'right'] },
  { key: 'bySurface', name: 'trail', order: [] as string[] },
  {
    key: 'byTemperature',
    name: 'temperature, °C',
    order: ['under -30', '-30 to -20', '-20 to -10', '-10 to 0', '0 and over'],
  },
  { key: 'byBooties', name: 'booties', order: ['on', 'off'] },
] as const;
const WINDOWS = [
  { key: 'last28', name: 'last 28 days' },
  { key: 'season', name: 'season' },
] as const;
type Kind = (typeof KINDS)[number];
type Window = (typeof WINDOWS)[number]['key'];
type Parts = Record<string, { metres: number; share?: number } | undefined>;

const partsOf = (dog: DogLoad, window: Window, kind: Kind): Parts => dog[window][kind.key] as Parts;

/** "not said" for what no note tells; a true minus in temperatures. */
function keyWords(kind: Kind, key: string): string {
  if (key === 'unknown') return 'not said';
  if (kind.key === 'bySurface') return valueWord('trail', 'surface', key);
  if (kind.key === 'byBooties') return key === 'on' ? 'with booties' : 'without';
  return key.replaceAll('-', '−');
}

/** Keys that occur in any dog, in the order of the trade; what was not said last. */
function keysIn(dogs: readonly DogLoad[], window: Window, kind: Kind): string[] {
  const keys = [...new Set(dogs.flatMap((dog) => Object.keys(partsOf(dog, window, kind))))];
  const rank = (key: string) => {
    if (key === 'unknown') return 999;
    const at = (kind.order as readonly string[]).indexOf(key);
    return at < 0 ? 100 : at;
  };
  return keys.sort((a, b) => rank(a) - rank(b) || a.localeCompare(b));
}

export function Shares({ load }: { load: LoadAnswer }) {
  const [kind, setKind] = useState<Kind>(KINDS[0]);
  const [window, setWindow] = useState<Window>('last28');
  const u = units.value;
  const keys = keysIn(load.dogs, window, kind);
  const columns: Column<DogLoad>[] = [
    { key: 'dog', name: 'Dog', cell: (dog) => <DogName dog={dog} />, by: (dog) => dog.dog },
    {
      key: 'all',
      name: `All, ${distanceUnit(u)}`,
      cell: (dog) => <span class="figure">{distanceFigure(dog[window].metres, u)}</span>,
      by: (dog) => dog[window].metres,
      numeric: true,
      largestFirst: true,
    },
    ...keys.map(
      (key): Column<DogLoad> => ({
        key,
        name: keyWords(kind, key),
        cell: (dog) => {
          const part = partsOf(dog, window, kind)[key];
          if (!part?.share) return <span class="hush">–</span>;
          return (
            <>
              <span class="figure">{Math.round(part.share * 100)} %</span>
              <span class="under hush">{distanceFigure(part.metres, u)}</span>
            </>
          );
        },
        by: (dog) => partsOf(dog, window, kind)[key]?.share,
        numeric: true,
        largestFirst: true,
      }),
    ),
  ];
  const name = `Share of each dog’s distance by ${kind.name}`;
  return (
    <details class="adding section">
      <summary>
        <h2>How the distance was made up</h2>
      </summary>
      <div class="stack">
        <div class="row no-print">
          <div class="field">
            <label for="sharekind">By</label>
            <select
              id="sharekind"
              value={kind.key}
              onChange={(event) => {
                const key = event.currentTarget.value;
                setKind(KINDS.find((one) => one.key === key) ?? KINDS[0]);
              }}
            >
              {KINDS.map((one) => (
                <option key={one.key} value={one.key}>
                  {one.name}
                </option>
              ))}
            </select>
          </div>
          <div class="field">
            <label for="sharewindow">In</label>
            <select
              id="sharewindow"
              value={window}
              onChange={(event) => setWindow(event.currentTarget.value === 'season' ? 'season' : 'last28')}
            >
              {WINDOWS.map((one) => (
                <option key={one.key} value={one.key}>
                  the {one.name}
                </option>
              ))}
            </select>
          </div>
        </div>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways has to be reached by the keyboard. */}
        <section class="scrolls" tabIndex={0} aria-label={`${name}, as a table`}>
          <SortTable
            key={`${kind.key} ${window}`}
            caption={name}
            columns={columns}
            rows={load.dogs}
            keyOf={(dog) => dog.id}
            start="all"
          />
        </section>
        {kind.key === 'bySurface' && <p class="small hush">{load.about.surfaces}</p>}
      </div>
    </details>
  );
}
