/** Settings of the kennel, its people, and what this device keeps for itself. */
import { useEffect, useState } from 'preact/hooks';
import type { Settings as Kept } from '../../server/model.ts';
import { getPeople, getSettings, putSettings } from '../api.ts';
import { People } from '../dogs/People.tsx';
import { singleKeys, theme } from '../keep.ts';
import { Head, Notice, Waiting, Wrong } from '../parts/Told.tsx';
import { refreshStatus, status } from '../status.ts';
import { useDoing, useFetched } from '../use.ts';

export function Settings() {
  const settings = useFetched(getSettings, []);
  const people = useFetched(getPeople, []);
  return (
    <div class="stack">
      <Head title="Settings" folio={status.value && `Snackstop ${status.value.version}`} />
      {settings.trouble && <Wrong error={settings.trouble} again={() => void settings.reload()} />}
      {!settings.data && settings.loading && <Waiting what="the settings" />}
      {settings.data && <KennelForm settings={settings.data} kept={settings.set} />}
      <section class="section stack" aria-labelledby="people">
        <h2 id="people">People</h2>
        <p class="hush">Drivers and handlers. A driver named in a note has a team and runs of their own.</p>
        {people.trouble && <Wrong error={people.trouble} again={() => void people.reload()} />}
        {people.data && <People people={people.data} reload={people.reload} />}
      </section>
      <section class="section stack" aria-labelledby="device">
        <h2 id="device">This device</h2>
        <fieldset class="field">
          <legend>Page</legend>
          <div class="chips">
            {(['day', 'night'] as const).map((value) => (
              <label key={value} class="chip">
                <input
                  type="radio"
                  name="theme"
                  checked={theme.value === value}
                  onChange={() => {
                    theme.value = value;
                  }}
                />
                {value === 'day' ? 'day: black on white' : 'night: dim and dark'}
              </label>
            ))}
          </div>
        </fieldset>
        <label class="tick">
          <input
            type="checkbox"
            checked={singleKeys.value === 'on'}
            onChange={(event) => {
              singleKeys.value = event.currentTarget.checked ? 'on' : 'off';
            }}
          />
          Single keys work in Review
        </label>
      </section>
      {status.value && (
        <section class="section stack" aria-labelledby="files">
          <h2 id="files">Files</h2>
          <p>
            Everything is kept on the machine that runs Snackstop, in <code>{status.value.folder}</code>. Copy that
            folder to keep a copy.
          </p>
        </section>
      )}
    </div>
  );
}

function KennelForm({ settings, kept }: { settings: Kept; kept: (settings: Kept) => void }) {
  const [form, setForm] = useState(settings);
  const [gap, setGap] = useState(String(settings.runGapHours));
  const [silence, setSilence] = useState(String(settings.silenceDays));
  const [told, setTold] = useState('');
  const [wrong, setWrong] = useState<{ gap?: string; silence?: string }>({});
  const doing = useDoing();
  useEffect(() => {
    setForm(settings);
    setGap(String(settings.runGapHours));
    setSilence(String(settings.silenceDays));
  }, [settings]);
  const seasons = [...new Set([...(status.value?.seasons ?? []), form.season].filter((s) => s !== undefined))].sort();
  const set = (to: Partial<Kept>) => {
    setTold('');
    setForm((was) => ({ ...was, ...to }));
  };
  const submit = (event: Event) => {
    event.preventDefault();
    const hours = Number(gap.trim().replace(',', '.'));
    const days = Number(silence.trim() || Number.NaN);
    const faults = {
      ...(hours >= 0.5 && hours <= 24 ? {} : { gap: 'Give a number of hours from 0.5 to 24.' }),
      ...(Number.isInteger(days) && days >= 1 && days <= 365
        ? {}
        : { silence: 'Give a whole number of days from 1 to 365.' }),
    };
    setWrong(faults);
    if (Object.keys(faults).length > 0) return;
    void doing.run(async () => {
      const answer = await putSettings({ ...form, runGapHours: hours, silenceDays: days });
      kept(answer.settings);
      await refreshStatus();
      setTold('The settings are kept.');
    });
  };
  return (
    <form class="stack" noValidate onSubmit={submit}>
      <div class="fields">
        <div class="field">
          <label for="kennel">Kennel</label>
          <input
            id="kennel"
            maxLength={80}
            value={form.kennel}
            onInput={(event) => set({ kennel: event.currentTarget.value })}
          />
        </div>
        <div class="field">
          <label for="season">Season shown</label>
          <select
            id="season"
            value={form.season ?? ''}
            onChange={(event) => set({ season: event.currentTarget.value || undefined })}
          >
            <option value="">the one that runs now</option>
            {seasons.map((season) => (
              <option key={season}>{season}</option>
            ))}
          </select>
        </div>
        <fieldset class="field">
          <legend>Units</legend>
          <div class="chips">
            {(['imperial', 'metric'] as const).map((value) => (
              <label key={value} class="chip">
                <input
                  type="radio"
                  name="units"
                  checked={form.units === value}
                  onChange={() => set({ units: value })}
                />
                {value === 'imperial' ? 'miles, °F, lb' : 'km, °C, kg'}
              </label>
            ))}
          </div>
        </fieldset>
        <div class="field">
          <label for="gap">Hours of silence before a new run</label>
          <input
            id="gap"
            inputMode="decimal"
            value={gap}
            aria-invalid={wrong.gap ? true : undefined}
            aria-describedby="gap-hint"
            onInput={(event) => setGap(event.currentTarget.value)}
          />
          <p id="gap-hint" class={wrong.gap ? 'wrong' : 'hint'}>
            {wrong.gap ?? 'A later note of the same day then starts a run of its own.'}
          </p>
        </div>
        <div class="field">
          <label for="silence">Days without a word before a finding ends</label>
          <input
            id="silence"
            inputMode="numeric"
            value={silence}
            aria-invalid={wrong.silence ? true : undefined}
            aria-describedby="silence-hint"
            onInput={(event) => setSilence(event.currentTarget.value)}
          />
          <p id="silence-hint" class={wrong.silence ? 'wrong' : 'hint'}>
            {wrong.silence ??
              'It then counts as “not seen since”, not as healed; when it is told again it has come back.'}
          </p>
        </div>
      </div>
      {doing.trouble && <Wrong error={doing.trouble} />}
      <Notice>{told}</Notice>
      <div>
        <button type="submit" class="button first" disabled={doing.busy}>
          Keep the settings
        </button>
      </div>
    </form>
  );
}
