/** Things the page tells: what went wrong, what there is to know, and what to do where there is nothing yet. */
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { Trouble } from '../trouble.ts';

/** An error: what happened, what was kept, what to do. `again` gives a button that tries once more. */
export function Wrong({ error, again }: { error: unknown; again?: () => void }) {
  const trouble = Trouble.of(error);
  return (
    <div class="told stack" role="alert">
      <p>{trouble.message}</p>
      {trouble.kept && <p>{trouble.kept}</p>}
      {trouble.todo && <p>{trouble.todo}</p>}
      {again && (
        <p>
          <button type="button" class="button tight" onClick={again}>
            Try again
          </button>
        </p>
      )}
    </div>
  );
}

/** A quiet message that is read out when it changes. */
export function Notice({ children }: { children?: ComponentChildren }) {
  return (
    <div role="status">
      {children && <div class="told accent">{typeof children === 'string' ? <p>{children}</p> : children}</div>}
    </div>
  );
}

/** Nothing here yet: why, and what to do next. */
export function Empty({ title, children }: { title: string; children?: ComponentChildren }) {
  return (
    <div class="empty">
      <h2>{title}</h2>
      {children}
    </div>
  );
}

/** Shown while something is fetched; only after a moment, so that quick answers do not flicker (see told.css). */
export function Waiting({ what }: { what: string }) {
  return (
    <p class="waiting hush" role="status">
      Fetching {what} …
    </p>
  );
}

/** Names the window after the page. */
export function useTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} · Snackstop`;
  }, [title]);
}

/** A page's head: its title, and on the right what it stands for (a day, a season, a count). */
export function Head({ title, folio }: { title: string; folio?: ComponentChildren }) {
  useTitle(title);
  return (
    <header class="head">
      <h1 tabIndex={-1}>{title}</h1>
      {folio && <p class="folio">{folio}</p>}
    </header>
  );
}
