/** The team drawn on its gangline from above: leaders at the top, the sled at the foot. The table beside it says the same. */
import type { RunDog } from '../../server/records/types.ts';
import { distanceWords, type Units } from '../units.ts';
import { leftWords, type TeamRow, teamOf } from './team.ts';

const WIDTH = 360;
const MIDDLE = WIDTH / 2;
/** From one row to the next. */
const STEP = 80;
/** From the gangline to a dog. */
const OUT = 30;
const TOP = 38;

/** Nose, ears, shoulders, loin, rump and tail, as one outline round the dog's middle. */
const DOG =
  'M0 -27Q1.8 -27 2.2 -23.5L3 -19.5L6.4 -20.6L5 -13.5Q8 -9 7.6 -3Q6 3 6.8 9Q6.4 15 1.4 16.5L0.8 25L-0.8 25L-1.4 16.5' +
  'Q-6.4 15 -6.8 9Q-6 3 -7.6 -3Q-8 -9 -5 -13.5L-6.4 -20.6L-3 -19.5L-2.2 -23.5Q-1.8 -27 0 -27Z';

/** A name that fits beside its dog. */
const short = (name: string) => (name.length > 14 ? `${name.slice(0, 13)}…` : name);

/** A dog seen from above; drawn with a dashed outline when it did not finish in the team. */
function Dog({ dog, x, y, tugTo, units }: { dog: RunDog; x: number; y: number; tugTo: number; units: Units }) {
  const side = x < MIDDLE ? -1 : 1;
  const centre = x === MIDDLE;
  const note = leftWords(dog, units);
  const textX = centre ? x + 20 : x + side * 16;
  const anchor = centre || side > 0 ? 'start' : 'end';
  return (
    <g class={`dog ${note ? 'gone' : ''}`}>
      {!centre && <path class="line" d={`M${x} ${y + 17}L${MIDDLE} ${tugTo}`} />}
      {!centre && <path class="line thin" d={`M${x - side * 3} ${y - 11}L${MIDDLE} ${y - 9}`} />}
      <path class="body" transform={`translate(${x} ${y})`} d={DOG} />
      <text class="name" x={textX} y={y} text-anchor={anchor}>
        {short(dog.dog)}
      </text>
      <text class="more" x={textX} y={y + 17} text-anchor={anchor}>
        {note || (dog.metres !== undefined ? distanceWords(dog.metres, units) : '')}
      </text>
    </g>
  );
}

function Row({ row, y, units }: { row: TeamRow; y: number; units: Units }) {
  const tugTo = y + 44;
  return (
    <>
      {row.left && <Dog dog={row.left} x={MIDDLE - OUT} {...{ y, tugTo, units }} />}
      {row.right && <Dog dog={row.right} x={MIDDLE + OUT} {...{ y, tugTo, units }} />}
      {row.centre && <Dog dog={row.centre} x={MIDDLE} {...{ y, tugTo, units }} />}
    </>
  );
}

/** A pair in which a dog's side was not told, so that the picture must not be taken for it. */
const sideless = ({ left, right }: TeamRow) =>
  [left, right].some((dog) => dog !== undefined && dog.stretches[0]?.side === undefined);

const POSITION_WORDS = {
  lead: 'lead',
  swing: 'swing',
  team: 'team',
  wheel: 'wheel',
  unknown: 'place not told',
} as const;

export function Gangline({ dogs, units }: { dogs: readonly RunDog[]; units: Units }) {
  const { rows, later } = teamOf(dogs);
  if (rows.length === 0 && later.length === 0) return null;
  const sledY = TOP + rows.length * STEP + 6;
  const names = rows.map((row) => {
    const dogNames = [row.left, row.right, row.centre].filter((dog) => dog !== undefined).map((dog) => dog.dog);
    return `${POSITION_WORDS[row.position]}: ${dogNames.join(' and ')}`;
  });
  return (
    <figure class="gangline">
      {rows.length > 0 && (
        <svg
          viewBox={`0 0 ${WIDTH} ${sledY + 74}`}
          role="img"
          aria-label={`The team at the start. ${names.join('; ')}.`}
        >
          <path class="line gang" d={`M${MIDDLE} ${TOP - 10}V${sledY + 4}`} />
          {rows.map((row, i) => {
            const y = TOP + i * STEP;
            const first = rows[i - 1]?.position !== row.position;
            return (
              <g key={y}>
                {first && (
                  <>
                    <path class="rank" d={`M0 ${y - 33}H${WIDTH}`} />
                    <text class="position" x="0" y={y - 19}>
                      {POSITION_WORDS[row.position]}
                    </text>
                  </>
                )}
                <Row row={row} y={y} units={units} />
              </g>
            );
          })}
          <g class="sled" transform={`translate(${MIDDLE} ${sledY})`}>
            <path d="M0 4L-12 16M0 4L12 16M-12 16q12 -9 24 0M-12 16V58M12 16V58M-12 30H12M-12 42H12M-15 62v-8M15 62v-8M-12 54H12" />
          </g>
        </svg>
      )}
      <figcaption class="small hush">
        The team as it left the yard.
        {rows.some(sideless) && ' Dogs whose side was not told stand where there is room.'}
        {later.length > 0 && ` Put in on the way: ${later.map((dog) => dog.dog).join(', ')}.`}
        {rows.some((row) => row.position === 'unknown') && ' Dogs whose place was not told stand before the wheel.'}
      </figcaption>
    </figure>
  );
}
