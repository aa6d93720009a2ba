/** What stands behind a picture: its table, laid out when it is first opened. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

export function Behind({ name, children }: { name: string; children: () => ComponentChildren }) {
  const [opened, setOpened] = useState(false);
  return (
    <details class="behind" onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>{name}</summary>
      {opened && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard.
        <section class="wide" tabIndex={0} aria-label={name}>
          {children()}
        </section>
      )}
    </details>
  );
}
