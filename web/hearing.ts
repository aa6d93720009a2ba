/** The browser's own speech recognition, where it has one. */

/** The part of the Web Speech API that is used; TypeScript's DOM library does not describe it. */
interface Recognition {
  lang: string;
  continuous: boolean;
  interimResults: boolean;
  onresult: ((event: RecognitionEvent) => void) | null;
  onerror: ((event: { error: string }) => void) | null;
  onend: (() => void) | null;
  start(): void;
  stop(): void;
  abort(): void;
}
interface RecognitionEvent {
  resultIndex: number;
  results: ArrayLike<ArrayLike<{ transcript: string }> & { isFinal: boolean }>;
}
type RecognitionClass = new () => Recognition;

function recognitionClass(): RecognitionClass | undefined {
  const w = window as unknown as { SpeechRecognition?: RecognitionClass; webkitSpeechRecognition?: RecognitionClass };
  return w.SpeechRecognition ?? w.webkitSpeechRecognition;
}

/** Whether this browser can listen at all. */
export const canHear = (): boolean => recognitionClass() !== undefined;

/** What the recogniser's error codes mean to the person who holds the phone. */
const ERRORS: Record<string, string> = {
  'not-allowed': 'The browser may not use the microphone for this page. Allow it in the browser’s settings, or type.',
  'service-not-allowed': 'This browser has its speech recognition switched off. Type the note instead.',
  'audio-capture': 'No microphone was found. Type the note instead.',
  network: 'The browser’s speech recognition needs a connection and has none. What was heard stays; type the rest.',
  'no-speech': 'Nothing was heard. Press Speak and try again, closer to the microphone.',
  'language-not-supported': 'This browser’s speech recognition does not know English. Type the note instead.',
};

export interface Listening {
  /** Ends it; the last words still come. */
  stop(): void;
}

/**
 * Listens until it is stopped or the browser stops by itself. `heard` gets the words so far: `sure` will not change any
 * more, `maybe` still can. `ended` comes once, with a sentence when something went wrong.
 */
export function listen(heard: (sure: string, maybe: string) => void, ended: (problem?: string) => void): Listening {
  const Recogniser = recognitionClass();
  if (!Recogniser) throw new Error('This browser has no speech recognition of its own.');
  const recogniser = new Recogniser();
  let problem: string | undefined;
  recogniser.lang = 'en-US';
  recogniser.continuous = true;
  recogniser.interimResults = true;
  recogniser.onresult = ({ results }) => {
    const all = Array.from(results);
    const words = (final: boolean) =>
      all
        .filter((result) => result.isFinal === final)
        .map((result) => result[0]?.transcript.trim() ?? '')
        .filter(Boolean)
        .join(' ');
    heard(words(true), words(false));
  };
  recogniser.onerror = ({ error }) => {
    if (error !== 'aborted') problem = ERRORS[error] ?? `The browser stopped listening (${error}). Type the rest.`;
  };
  recogniser.onend = () => ended(problem);
  recogniser.start();
  return { stop: () => recogniser.stop() };
}

/** Reads sentences aloud, where the browser can; a new call cuts the old one short. */
export function readAloud(sentences: readonly string[]): void {
  if (!('speechSynthesis' in window)) return;
  window.speechSynthesis.cancel();
  const words = new SpeechSynthesisUtterance(sentences.join('. '));
  words.lang = 'en-US';
  window.speechSynthesis.speak(words);
}
/** Whether this browser can read aloud. */
export const canReadAloud = (): boolean => 'speechSynthesis' in window;
