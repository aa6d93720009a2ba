/** The keys of the page, shown on the page, and the switch that turns them off. */
import { singleKeys } from '../keep.ts';
import { KEYS } from './keys.ts';

export function Keys() {
  const on = singleKeys.value === 'on';
  return (
    <section class="keys no-print" aria-label="Keys">
      <h2>Keys</h2>
      {on && (
        <dl>
          {KEYS.map((key) => (
            <div key={key.shown}>
              <dt>
                <kbd>{key.shown}</kbd>
              </dt>
              <dd>{key.does}</dd>
            </div>
          ))}
        </dl>
      )}
      <label class="tick">
        <input
          type="checkbox"
          checked={on}
          onChange={(event) => {
            singleKeys.value = event.currentTarget.checked ? 'on' : 'off';
          }}
        />
        Single keys work on this page, outside of fields
      </label>
    </section>
  );
}
