/** The start page: speak or type a note, see at once what was understood, keep it. Made for mitts and ten seconds. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { alarmsOf } from '../../grammar/cautions.ts';
import { canHear, canReadAloud, type Listening, listen, readAloud } from '../hearing.ts';
import { draft, readBack, speaker } from '../keep.ts';
import { keepNote, newNote } from '../outbox/outbox.ts';
import { Notebook } from '../parts/Notebook.tsx';
import { Lately, OutboxLine, Refused } from '../parts/OnDevice.tsx';
import { Notice, useTitle, Wrong } from '../parts/Told.tsx';
import { readEntries, Understood, useUnderstanding } from '../parts/Understood.tsx';
import { freshContext, keptContext, warmUp } from '../reading/reading.ts';
import { useDoing } from '../use.ts';
import { NoteCautions } from '../watch/Cautions.tsx';
import { OpenLine } from '../watch/OpenLine.tsx';
import { aloud } from '../words.ts';

/** Listening: the words heard go behind those that stood in the box when it began. */
function useListening() {
  const [listening, setListening] = useState<Listening>();
  const [problem, setProblem] = useState<string>();
  const dictated = useRef(false);
  const stop = useCallback(() => listening?.stop(), [listening]);
  const start = () => {
    const before = draft.value.trim();
    setProblem(undefined);
    try {
      setListening(
        listen(
          (sure, maybe) => {
            dictated.current = true;
            draft.value = [before, sure, maybe].filter(Boolean).join(' ');
          },
          (wrong) => {
            setListening(undefined);
            setProblem(wrong);
          },
        ),
      );
    } catch {
      setProblem('The browser would not listen just now. Press Speak again, or type.');
    }
  };
  useEffect(() => () => listening?.stop(), [listening]);
  return { on: listening !== undefined, start, stop, problem, dictated };
}

function SpeakButton({ on, start, stop }: { on: boolean; start: () => void; stop: () => void }) {
  return (
    <button type="button" class={`speakbutton ${on ? 'on' : ''}`} aria-pressed={on} onClick={on ? stop : start}>
      <span class="does">{on ? 'Stop' : 'Speak'}</span>
      <span class="how">{on ? 'listening — press when done' : 'press, talk, press again'}</span>
    </button>
  );
}

function Choices({ people }: { people: readonly string[] }) {
  return (
    <div class="choices">
      {people.length > 0 && (
        <div class="field">
          <label for="speaker">Who speaks</label>
          <select
            id="speaker"
            value={speaker.value}
            onChange={(event) => {
              speaker.value = event.currentTarget.value;
            }}
          >
            <option value="">nobody named</option>
            {people.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </div>
      )}
      {canReadAloud() && (
        <label class="tick">
          <input
            type="checkbox"
            checked={readBack.value === 'on'}
            onChange={(event) => {
              readBack.value = event.currentTarget.checked ? 'on' : 'off';
            }}
          />
          Read back aloud when kept
        </label>
      )}
    </div>
  );
}

export function Speak() {
  const [context, setContext] = useState(keptContext);
  const [kept, setKept] = useState('');
  const box = useRef<HTMLTextAreaElement>(null);
  const hears = canHear();
  const listening = useListening();
  const keeping = useDoing();
  const by = context.people.includes(speaker.value) ? speaker.value : undefined;
  const understanding = useUnderstanding(draft.value, context);
  const text = draft.value.trim();
  const alarms = text && understanding.reading ? alarmsOf(understanding.reading.entries) : [];

  const look = useCallback(() => void freshContext(by).then(setContext), [by]);
  useEffect(look, [look]);
  useEffect(warmUp, []);
  useTitle('Speak');

  const clear = () => {
    draft.value = '';
    listening.dictated.current = false;
  };
  const keep = () =>
    keeping.run(async () => {
      if (!text) return;
      listening.stop();
      const { reading } = understanding.text === draft.value ? understanding : {};
      await keepNote(newNote(text, listening.dictated.current ? 'dictated' : 'typed', by));
      if (readBack.value === 'on' && reading)
        readAloud([...alarms.map(({ says }) => says), ...readEntries(reading).map(aloud)]);
      clear();
      setKept('Kept.');
      box.current?.focus({ preventScroll: true });
      look();
    });

  return (
    <div class="speak">
      <h1 tabIndex={-1} class="silent">
        Speak
      </h1>
      <OutboxLine />
      <OpenLine />
      <div class="speaking stack">
        {hears ? (
          <SpeakButton on={listening.on} start={listening.start} stop={listening.stop} />
        ) : (
          <p class="told">
            Typed notes only: this browser has no speech recognition of its own. The microphone on a phone’s own
            keyboard works here as well.
          </p>
        )}
        {listening.problem && <Notice>{listening.problem}</Notice>}
        <div class="field">
          <label for="note" class="unseen">
            Note
          </label>
          <textarea
            id="note"
            ref={box}
            rows={hears ? 3 : 5}
            value={draft.value}
            placeholder="Snack stop at mile fourteen, everyone ate …"
            autocapitalize="sentences"
            enterkeyhint="enter"
            onInput={(event) => {
              draft.value = event.currentTarget.value;
              setKept('');
            }}
            onKeyDown={(event) => {
              if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
                event.preventDefault();
                void keep();
              }
            }}
          />
        </div>
      </div>
      <NoteCautions alarms={alarms} fresh />
      <section class="heard stack" aria-label="Understood" aria-live="polite">
        <h2>Understood</h2>
        <Understood {...understanding} />
      </section>
      <div class="keepbar">
        <button type="button" class="button accent keep" disabled={!text || keeping.busy} onClick={() => void keep()}>
          Keep <kbd class="only-wide">Ctrl Enter</kbd>
        </button>
        {text && (
          <button type="button" class="button" onClick={clear}>
            Clear
          </button>
        )}
        <span role="status" class="keptword">
          {text ? '' : kept}
        </span>
      </div>
      {keeping.trouble && <Wrong error={keeping.trouble} />}
      <Refused
        giveBack={(words) => {
          draft.value = [draft.value.trim(), words].filter(Boolean).join('\n');
          box.current?.focus();
        }}
      />
      <Choices people={context.people} />
      {hears && (
        <p class="hush small">
          The browser’s own speech recognition may send what it hears to its maker. What is typed stays between this
          device and Snackstop.
        </p>
      )}
      <Lately />
      <Notebook />
    </div>
  );
}
