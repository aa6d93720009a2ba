/** Export: the season as files, the pages to print, the whole store to keep, and a copy restored into an empty one. */
import { useRef, useState } from 'preact/hooks';
import { getDogs } from '../api.ts';
import { getExportable, type Restored, restoreStore } from '../api-taking.ts';
import { counted, listWords } from '../labels.ts';
import { Head, Notice, Waiting, Wrong } from '../parts/Told.tsx';
import { refreshStatus, status } from '../status.ts';
import { useDoing, useFetched } from '../use.ts';

export function Export() {
  const { data, trouble, loading, reload } = useFetched(getExportable, []);
  const [picked, setPicked] = useState<string>();
  const season = picked ?? data?.season ?? '';
  const kept = data?.seasons.find((one) => one.season === season);
  return (
    <div class="stack">
      <Head title="Export" folio={season && `season ${season}`} />
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      {!data && loading && <Waiting what="what there is" />}
      {data && (
        <div class="takings">
          {data.seasons.length > 1 && (
            <div class="field">
              <label for="season">Season</label>
              <select id="season" value={season} onChange={(event) => setPicked(event.currentTarget.value)}>
                {data.seasons.map((one) => (
                  <option key={one.season} value={one.season}>
                    {one.season}, {counted(one.notes, 'note')}
                  </option>
                ))}
              </select>
            </div>
          )}
          <Season season={season} kept={kept !== undefined} several={data.seasons.length > 1} />
          <Printed season={season} />
          <Store folder={status.value?.folder} />
          <Restore empty={data.empty} done={() => void reload()} />
        </div>
      )}
    </div>
  );
}

function Season({ season, kept, several }: { season: string; kept: boolean; several: boolean }) {
  return (
    <section class="taking" aria-labelledby="season-files">
      <h2 id="season-files">The season as files</h2>
      {kept ? (
        <>
          <p>
            Dogs, runs, dogs in runs, findings, food and water, notes, entries and daily load. The CSV files come with a
            description of every column and its unit (a Frictionless Data Package); the spreadsheet holds the same
            tables, a sheet each.
          </p>
          <p class="row">
            <a class="button first" href={`/api/export/season.zip?season=${season}`} download>
              CSV files of {season}
            </a>
            <a class="button" href={`/api/export/season.xlsx?season=${season}`} download>
              Spreadsheet of {season}
            </a>
            {several && (
              <a class="button" href="/api/export/season.zip?season=all" download>
                CSV files of every season
              </a>
            )}
          </p>
          <p class="small hush">
            A text that a spreadsheet would run as a formula has an apostrophe put in front; the description says how to
            take it away again.
          </p>
        </>
      ) : (
        <p>
          Nothing is kept of the season {season} yet. <a href="/">Speak a note</a>, then come back.
        </p>
      )}
    </section>
  );
}

function Printed({ season }: { season: string }) {
  const { data: dogs } = useFetched(getDogs, []);
  const asked = `?season=${season}`;
  return (
    <section class="taking" aria-labelledby="printed">
      <h2 id="printed">To print</h2>
      <p>
        The season at a glance, and for each dog a sheet of what was said and seen, for your veterinarian. They fit A4
        and Letter paper.
      </p>
      <p>
        <a class="button" href={`/summary${asked}`}>
          Summary of {season}
        </a>
      </p>
      {dogs && dogs.length > 0 && (
        <ul class="row sheets" aria-label="Health sheets">
          {dogs.map((dog) => (
            <li key={dog.id}>
              <a class="button tight" href={`/dogs/${dog.id}/sheet${asked}`}>
                {dog.name}
              </a>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Store({ folder }: { folder?: string }) {
  return (
    <section class="taking" aria-labelledby="whole">
      <h2 id="whole">Everything, to keep</h2>
      <p>
        One ZIP with every file of {folder ? <span class="figure">{folder}</span> : 'the folder'}, byte for byte, and
        their checksums. Keep it on another disk; it restores to just what is here now.
      </p>
      <p>
        <a class="button" href="/api/export/store.zip" download>
          The whole store
        </a>
      </p>
    </section>
  );
}

function Restore({ empty, done }: { empty: boolean; done: () => void }) {
  const file = useRef<HTMLInputElement>(null);
  const [name, setName] = useState('');
  const [restored, setRestored] = useState<Restored>();
  const doing = useDoing();
  const restore = () =>
    doing.run(async () => {
      const chosen = file.current?.files?.[0];
      if (!chosen) return;
      setRestored(await restoreStore(chosen));
      await refreshStatus();
      done();
    });
  return (
    <section class="taking" aria-labelledby="restore">
      <h2 id="restore">Restore</h2>
      {empty ? (
        <form
          class="stack"
          onSubmit={(event) => {
            event.preventDefault();
            void restore();
          }}
        >
          <p>Nothing is kept here yet: choose the ZIP of a whole store, and it is taken in as it was.</p>
          <div class="field">
            <label for="store">ZIP of a whole store</label>
            <input
              id="store"
              ref={file}
              type="file"
              accept=".zip,application/zip"
              onChange={(event) => setName(event.currentTarget.files?.[0]?.name ?? '')}
            />
          </div>
          <p>
            <button type="submit" class="button first" disabled={doing.busy || name === ''}>
              {doing.busy ? 'Restoring …' : 'Restore'}
            </button>
          </p>
        </form>
      ) : (
        <p>
          A copy is restored only where nothing is kept yet, so that nothing here is lost. Start Snackstop on an empty
          folder (<kbd>npm start -- --data FOLDER</kbd>) and open this page there.
        </p>
      )}
      {doing.trouble && <Wrong error={doing.trouble} />}
      <Notice>
        {restored &&
          `Restored: ${counted(restored.dogs, 'dog')}, ${counted(restored.notes, 'note')} of ${
            restored.seasons.length > 0 ? `the season ${listWords(restored.seasons)}` : 'no season'
          }.`}
      </Notice>
    </section>
  );
}
