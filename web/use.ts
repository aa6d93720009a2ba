/** Hooks that pages share: fetching what they show, doing one thing at a time, and how wide the screen is. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { Trouble } from './trouble.ts';

/** What a page fetches. Old data stays shown while new data is on its way. */
export interface Fetched<T> {
  data?: T;
  trouble?: Trouble;
  loading: boolean;
  reload: () => Promise<void>;
  set: (data: T) => void;
}

/** Fetches when the page comes up and whenever one of `deps` changes; a late answer to an old question is dropped. */
export function useFetched<T>(get: () => Promise<T>, deps: readonly unknown[]): Fetched<T> {
  const [state, setState] = useState<{ data?: T; trouble?: Trouble; loading: boolean }>({ loading: true });
  const asked = useRef(0);
  const reload = useCallback(async () => {
    const mine = ++asked.current;
    setState((was) => ({ ...was, loading: true }));
    try {
      const data = await get();
      if (mine === asked.current) setState({ data, loading: false });
    } catch (error) {
      if (mine === asked.current) setState((was) => ({ data: was.data, trouble: Trouble.of(error), loading: false }));
    }
  }, deps);
  useEffect(() => {
    void reload();
  }, [reload]);
  const set = useCallback((data: T) => {
    asked.current++;
    setState({ data, loading: false });
  }, []);
  return { ...state, reload, set };
}

/** Runs one thing at a time: a second press while the first is under way does nothing. Keeps the last trouble. */
export function useDoing() {
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<Trouble>();
  const running = useRef(false);
  const run = useCallback(async (act: () => Promise<void>) => {
    if (running.current) return;
    running.current = true;
    setBusy(true);
    try {
      await act();
      setTrouble(undefined);
    } catch (error) {
      setTrouble(Trouble.of(error));
    } finally {
      running.current = false;
      setBusy(false);
    }
  }, []);
  return { busy, trouble, run, clear: useCallback(() => setTrouble(undefined), []) };
}

const NARROW = '(max-width: 59.99rem)';

/** Whether the screen is as narrow as the styles' phone layout; paper is not. */
export function useNarrow(): boolean {
  const [narrow, setNarrow] = useState(() => matchMedia(NARROW).matches);
  useEffect(() => {
    const query = matchMedia(NARROW);
    const look = () => setNarrow(query.matches);
    query.addEventListener('change', look);
    return () => query.removeEventListener('change', look);
  }, []);
  return narrow;
}
