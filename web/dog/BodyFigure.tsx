/** A dog drawn from above with its four limbs: where something was found this season, and how often. */
import type { DogSeason } from '../../server/dog/index.ts';
import { counted } from '../labels.ts';
import { dayWords } from '../times.ts';
import { Behind } from './Behind.tsx';
import { HEIGHT, type Spot, spotsOf, WIDTH } from './body.ts';

/** Body, head, ears and tail; the right half is the mirror of the left. */
const HALF =
  'M200 6C192 6 188 20 186 34C180 40 172 52 172 66L160 92Q172 96 178 100C176 112 166 120 158 134C148 158 150 196 158 236' +
  'C162 262 156 284 152 306C150 340 170 366 196 372L197 470L200 474';
const FRONT_LEG = 'M152 142L94 174L58 224L36 256';
const HIND_LEG = 'M158 312L100 346L60 394L38 424';

function Half({ mirrored }: { mirrored?: boolean }) {
  return (
    <g transform={mirrored ? `translate(${WIDTH} 0) scale(-1 1)` : undefined}>
      {[FRONT_LEG, HIND_LEG].map((leg) => (
        <g key={leg}>
          <path class="leg edge" d={leg} />
          <path class="leg" d={leg} />
        </g>
      ))}
      {[
        [36, 256],
        [38, 424],
      ].map(([x, y]) => (
        <ellipse key={y} class="paw" cx={x} cy={y} rx={19} ry={21} />
      ))}
      <path class="trunk" d={HALF} />
    </g>
  );
}

const words = ({ name, episodes, doubtful, days, open }: Spot) =>
  `${name}: ${[episodes > 0 && counted(episodes, 'time'), doubtful > 0 && `${doubtful} maybe`].filter(Boolean).join(', ')}, on ${counted(days, 'day')}${open ? ', open' : ''}`;

function Mark({ spot }: { spot: Spot }) {
  const { x, y, episodes, open } = spot;
  // Rings of spots beside each other must not cover one another: the number tells how often, the ring only a little.
  const r = Math.min(16, 10 + episodes * 1.5);
  return (
    <g class={['spot', open && 'open', episodes === 0 && 'maybe'].filter(Boolean).join(' ')}>
      <title>{words(spot)}</title>
      <circle cx={x} cy={y} r={r} />
      <text x={x} y={y + 6}>
        {episodes === 0 ? '?' : episodes}
      </text>
    </g>
  );
}

export function BodyFigure({ story, about }: { story: DogSeason; about: string }) {
  const { sites, together, dog } = story;
  const { spots, elsewhere } = spotsOf(sites);
  return (
    <section class="section stack" aria-labelledby="where">
      <h2 id="where">Where, and how often</h2>
      {sites.length === 0 ? (
        <p class="hush">No finding was told of {dog.name} this season.</p>
      ) : (
        <>
          <figure class="bodyfigure">
            <svg
              viewBox={`-8 -30 ${WIDTH + 16} ${HEIGHT + 30}`}
              role="img"
              aria-label={`${dog.name} from above. ${spots.map(words).join('. ')}`}
            >
              <text class="side" x={0} y={-8}>
                ITS LEFT
              </text>
              <text class="side" x={WIDTH} y={-8} text-anchor="end">
                ITS RIGHT
              </text>
              <Half />
              <Half mirrored />
              {spots.map((spot) => (
                <Mark key={spot.key} spot={spot} />
              ))}
            </svg>
            <figcaption class="small">
              Seen from above, nose at the top: left and right are the dog’s own. The number says how often, a filled
              ring that it is open, “?” that nobody was sure. A foot stands for its pads, webs, toes and nails.
            </figcaption>
          </figure>
          {elsewhere.length > 0 && (
            <p>
              Not on the drawing, because the side or end was not said or it is of the whole dog:{' '}
              {elsewhere
                .map((one) => `${one.site.label} (${one.episodes || '?'}${one.open ? ', open' : ''})`)
                .join('; ')}
              .
            </p>
          )}
          {together.length > 0 && <p class="small hush">{about}</p>}
          <Behind name="The places as a table">
            {() => (
              <table class="table figures">
                <caption class="unseen">Findings by place, this season</caption>
                <thead>
                  <tr>
                    <th scope="col">Where</th>
                    <th scope="col" class="right">
                      Times
                    </th>
                    <th scope="col" class="right">
                      Days
                    </th>
                    <th scope="col">Last</th>
                    <th scope="col">Now</th>
                  </tr>
                </thead>
                <tbody>
                  {sites.map((one) => (
                    <tr key={one.site.key}>
                      <th scope="row">{one.site.label}</th>
                      <td class="right">
                        {[one.episodes > 0 && one.episodes, one.doubtful > 0 && `${one.doubtful} maybe`]
                          .filter(Boolean)
                          .join(', ')}
                      </td>
                      <td class="right">{one.days.length}</td>
                      <td>{one.days.length > 0 ? dayWords(one.days.at(-1) as string) : '–'}</td>
                      <td>{one.open ? 'open' : '–'}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
          </Behind>
        </>
      )}
    </section>
  );
}
