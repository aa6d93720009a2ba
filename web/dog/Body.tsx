/** Appetite and what was measured, over the days of the season. */
import type { DogSeason } from '../../server/dog/index.ts';
import { counted, valueWord } from '../labels.ts';
import { dayWords } from '../times.ts';
import type { Units } from '../units.ts';
import { figure, sentence } from '../words.ts';
import { Behind } from './Behind.tsx';
import { Drawn } from './Drawn.tsx';
import { isSo } from './days.ts';

type Measured = DogSeason['measures'][number];
interface Props {
  story: DogSeason;
  span: { from: string; to: string };
}

export function AppetitePicture({ story, span }: Props) {
  const { appetite, dog } = story;
  const told = appetite.filter((one) => isSo(one.assertion));
  const notAll = told.filter((one) => one.took !== 'all');
  return (
    <section class="section stack" aria-labelledby="appetite">
      <h2 id="appetite">Appetite</h2>
      {told.length === 0 ? (
        <p class="hush">Nothing was told of what {dog.name} ate and drank.</p>
      ) : (
        <>
          <p>
            Told {counted(told.length, 'time')}:{' '}
            {notAll.length === 0
              ? 'it took all of it each time.'
              : `all of it ${counted(told.length - notAll.length, 'time')}, less ${counted(notAll.length, 'time')}.`}
          </p>
          <ul class="legend small" aria-label="What the picture shows">
            <li>
              <i class="sign" aria-hidden="true">
                ○
              </i>{' '}
              snack
            </li>
            <li>
              <i class="sign" aria-hidden="true">
                □
              </i>{' '}
              meal
            </li>
            <li>
              <i class="sign" aria-hidden="true">
                △
              </i>{' '}
              water
            </li>
            <li>large and filled: not all of it</li>
          </ul>
          <Drawn
            label={`How much ${dog.name} took, day by day: ${notAll.map((one) => `${dayWords(one.day)} ${one.took} of the ${one.what}`).join('; ') || 'all of it each time'}`}
            draw={(by, width) => by.appetitePicture(told, span, width)}
            of={[story]}
          />
          <Behind name="Appetite as a table">
            {() => (
              <table class="table figures">
                <caption class="unseen">What it took, newest first</caption>
                <thead>
                  <tr>
                    <th scope="col">Day</th>
                    <th scope="col">What</th>
                    <th scope="col">Took</th>
                    <th scope="col">Note</th>
                  </tr>
                </thead>
                <tbody>
                  {appetite.toReversed().map((one) => (
                    <tr key={one.id}>
                      <th scope="row">{dayWords(one.day)}</th>
                      <td>{[one.what, one.item].filter(Boolean).join(', ')}</td>
                      <td>
                        {valueWord('intake', 'took', one.took)}
                        {one.assertion &&
                          one.assertion !== 'present' &&
                          ` (${valueWord('intake', 'assertion', one.assertion)})`}
                      </td>
                      <td>
                        <a href={`/review/${one.note}`}>{one.at.slice(11, 16)}</a>
                      </td>
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

const QUANTITIES = ['weight', 'body-condition', 'temperature', 'heart-rate'] as const;
const HEADS = {
  weight: 'Weight',
  'body-condition': 'Body condition, of 9',
  temperature: 'Body temperature',
  'heart-rate': 'Heart rate',
};
/** Record units in the kennel's: 1 lb = 0.453 592 37 kg (NIST SP 811, appendix B.8). */
const KG_PER_POUND = 0.45359237;

/** What can be drawn of a quantity, in the kennel's unit; a weight whose unit was not said can't be. */
function drawable(measures: readonly Measured[], quantity: Measured['quantity'], units: Units) {
  return measures.flatMap((one) => {
    if (one.quantity !== quantity || one.inRecordUnits === undefined || !isSo(one.assertion)) return [];
    const value = inKennelUnits(quantity, one.inRecordUnits, units);
    return [{ day: one.day, value, words: figure(Math.round(value * 10) / 10) }];
  });
}
function inKennelUnits(quantity: Measured['quantity'], value: number, units: Units): number {
  if (units === 'metric') return value;
  if (quantity === 'weight') return value / KG_PER_POUND;
  return quantity === 'temperature' ? value * 1.8 + 32 : value;
}
const unitOf = (quantity: Measured['quantity'], units: Units) =>
  ({
    weight: units === 'metric' ? ', kg' : ', lb',
    temperature: units === 'metric' ? ', °C' : ', °F',
    'body-condition': '',
    'heart-rate': ', beats a minute',
  })[quantity];

export function Measures({ story, span, units }: Props & { units: Units }) {
  const { measures, dog } = story;
  return (
    <section class="section stack" aria-labelledby="measures">
      <h2 id="measures">Weight and other measures</h2>
      {measures.length === 0 ? (
        <p class="hush">Nothing was measured of {dog.name} this season.</p>
      ) : (
        <>
          {QUANTITIES.map((quantity) => {
            const values = drawable(measures, quantity, units);
            if (values.length < 2) return null;
            const head = `${HEADS[quantity]}${unitOf(quantity, units)}`;
            return (
              <div key={quantity}>
                <h3>{head}</h3>
                <Drawn
                  label={`${head}: ${values.map(({ day, words }) => `${dayWords(day)} ${words}`).join(', ')}`}
                  draw={(by, width) =>
                    by.measurePicture(values, span, width, quantity === 'body-condition' ? 1 : undefined)
                  }
                  of={[story, units]}
                />
              </div>
            );
          })}
          <Behind name="Measures as a table">
            {() => (
              <table class="table figures">
                <caption class="unseen">What was measured, newest first, as it was said</caption>
                <thead>
                  <tr>
                    <th scope="col">Day</th>
                    <th scope="col">Measured</th>
                    <th scope="col">Note</th>
                  </tr>
                </thead>
                <tbody>
                  {measures.toReversed().map((one) => (
                    <tr key={one.id}>
                      <th scope="row">{dayWords(one.day)}</th>
                      <td>
                        {sentence({
                          kind: 'measure',
                          dogs: [],
                          quantity: one.quantity,
                          value: one.value,
                          unit: one.unit,
                          assertion: one.assertion,
                        })}
                      </td>
                      <td>
                        <a href={`/review/${one.note}`}>{one.at.slice(11, 16)}</a>
                      </td>
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
