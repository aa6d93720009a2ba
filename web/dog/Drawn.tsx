/** A picture drawn by the chart library, which is fetched when the first one is wanted; drawn again when its room changes. */
import { useEffect, useRef, useState } from 'preact/hooks';

export type Pictures = typeof import('./picture.ts');

let fetched: Promise<Pictures> | undefined;
const pictures = () => {
  fetched ??= import('./picture.ts').catch((error: unknown) => {
    fetched = undefined;
    throw error;
  });
  return fetched;
};

/** The library names the groups of its marks; the picture as a whole is named here, and these would say nothing more. */
function withoutNames(picture: Element): Element {
  for (const one of picture.querySelectorAll('[aria-label]')) one.removeAttribute('aria-label');
  return picture;
}

interface Props {
  /** What the picture shows, for those who do not see it. */
  label: string;
  /** Draws it at a width in pixels. */
  draw: (by: Pictures, width: number) => Element;
  /** Drawn again when one of these changes. */
  of: readonly unknown[];
}

export function Drawn({ label, draw, of }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  const [lost, setLost] = useState(false);
  useEffect(() => {
    const seen = new ResizeObserver(([entry]) => {
      const wide = Math.floor(entry?.contentRect.width ?? 0);
      // Paper is narrower than the screen: the picture is made smaller as a whole, not drawn anew half-way.
      if (wide > 0 && !matchMedia('print').matches) setWidth(wide);
    });
    if (place.current) seen.observe(place.current);
    return () => seen.disconnect();
  }, []);
  useEffect(() => {
    if (width === 0) return;
    let late = false;
    pictures().then(
      (by) => {
        if (!late) place.current?.replaceChildren(withoutNames(draw(by, width)));
      },
      () => setLost(true),
    );
    return () => {
      late = true;
    };
  }, [width, ...of]);
  return (
    <>
      <div class="drawn" role="img" aria-label={label} ref={place} />
      {lost && <p class="told">The picture could not be fetched; the table below has its figures.</p>}
    </>
  );
}
