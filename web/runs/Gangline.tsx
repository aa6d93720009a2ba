/** The team drawn on its gangline from above: leaders at the top, the sled at the foot. The table beside it says the same. */
import type { RunDog } from '../../server/records/types.ts';
import { distanceWords, type Units } from '../units.ts';
import { leftWords, type TeamRow, teamOf } from './team.ts';

const WIDTH = 360;
const MIDDLE = WIDTH / 2;
/** From one row to the next. */
const STEP = 78;
/** From the gangline to a dog. */
const OUT = 30;
const TOP = 34;

/** A name that fits beside its dog. */
const short = (name: string) => (name.length > 14 ? `${name.slice(0, 13)}…` : name);

/** A dog seen from above: body, head, tail; drawn with a dashed outline when it did not finish in the team. */
function Dog({ dog, x, y, tugTo, units }: { dog: RunDog; x: number; y: number; tugTo: number; units: Units }) {
  const side = x < MIDDLE ? -1 : 1;
  const centre = x === MIDDLE;
  const note = leftWords(dog, units);
  const textX = centre ? x + 20 : x + side * 16;
  const anchor = centre || side > 0 ? 'start' : 'end';
  return (
    <g class={`dog ${note ? 'gone' : ''}`}>
      {!centre && <path class="line" d={`M${x} ${y + 17}L${MIDDLE} ${tugTo}`} />}
      {!centre && <path class="line thin" d={`M${x - side * 3} ${y - 12}L${MIDDLE} ${y - 10}`} />}
      <path class="line thin" d={`M${x} ${y + 14}q${side * 5} 8 ${side * 2} 14`} />
      <ellipse class="body" cx={x} cy={y + 2} rx="7.5" ry="14.5" />
      <path class="body" d={`M${x - 5.5} ${y - 13}l-1.5 -9l5 3.5h4l5 -3.5l-1.5 9q-5.5 5 -11 0z`} />
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
                    <path class="rank" d={`M0 ${y - 29}H${WIDTH}`} />
                    <text class="position" x="0" y={y - 15}>
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
        {later.length > 0 && ` Put in on the way: ${later.map((dog) => dog.dog).join(', ')}.`}
        {rows.some((row) => row.position === 'unknown') && ' Dogs whose place was not told stand before the wheel.'}
      </figcaption>
    </figure>
  );
}
