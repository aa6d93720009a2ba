/** One dog's row of the picture: bars on a shared scale, findings on a line under them. */
import type { Episode } from '../api.ts';
import type { DogLoad } from './columns.tsx';
import { lastDay, place } from './days.ts';

const HEIGHT = 46;
const BARS = 32;
const LINE = 40;

interface Props {
  dog: DogLoad;
  episodes: readonly Episode[];
  /** The highest bar of the picture, metres. */
  most: number;
  /** The day pointed at. */
  day?: number;
  point: (day: number) => void;
}

/** Across it goes by per cent, so that it fits any width and its marks stay round. */
export function Row({ dog, episodes, most, day, point }: Props) {
  const { from, metres, runs, unknown } = dog.days;
  const count = metres.length;
  const x = (at: number) => `${(at / count) * 100}%`;
  const at = (event: PointerEvent) => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    const index = Math.floor(((event.clientX - box.left) / box.width) * count);
    if (index >= 0 && index < count) point(index);
  };
  const missing = unknown.map((one) => place(from, one));
  const record = dog.since === undefined ? count : Math.max(0, Math.min(count, place(from, dog.since)));
  return (
    <svg class="weekbars" height={HEIGHT} aria-hidden="true" onPointerMove={at} onPointerDown={at}>
      {Array.from({ length: Math.floor((count - 1) / 7) }, (_, i) => count - (i + 1) * 7).map((week) => (
        <line key={week} class="week" x1={x(week)} x2={x(week)} y1={0} y2={BARS} />
      ))}
      {record > 0 && <line class="norecord" x1="0" x2={x(record)} y1={BARS - 3} y2={BARS - 3} />}
      {metres.map((value, i) => {
        if ((runs[i] ?? 0) === 0) return null;
        const least = missing.includes(i);
        const height = Math.max(least ? 8 : 2, (value / most) * (BARS - 2));
        return (
          <rect
            key={i}
            class={least ? 'bar unknown' : 'bar'}
            x={`${((i + 0.12) / count) * 100}%`}
            width={`${(0.76 / count) * 100}%`}
            y={BARS - height}
            height={height}
          />
        );
      })}
      <line class="base" x1={x(record)} x2="100%" y1={BARS} y2={BARS} />
      {episodes.map((episode) => (
        <Finding key={episode.id} {...{ episode, dog, count, x }} />
      ))}
      {day !== undefined && <rect class="pointed" x={x(day)} width={`${100 / count}%`} y={0.5} height={HEIGHT - 1} />}
    </svg>
  );
}

interface FindingProps {
  episode: Episode;
  dog: DogLoad;
  count: number;
  x: (at: number) => string;
}
function Finding({ episode, dog, count, x }: FindingProps) {
  const { from } = dog.days;
  const start = Math.max(0, place(from, episode.from));
  const end = place(from, lastDay(episode, dog.on));
  if (end < 0 || start >= count) return null;
  const days = [...new Map(episode.seen.map((mention) => [mention.day, mention])).values()];
  return (
    <g>
      <line
        class={episode.state === 'open' ? 'span open' : 'span'}
        x1={x(start + 0.5)}
        x2={episode.state === 'open' ? '100%' : x(end + 0.5)}
        y1={LINE}
        y2={LINE}
      />
      {days.map((mention) => {
        const at = place(from, mention.day);
        if (at < 0 || at >= count) return null;
        const maybe = mention.assertion === 'possible';
        return (
          <circle
            key={mention.id}
            class={maybe ? 'seen maybe' : 'seen'}
            cx={x(at + 0.5)}
            cy={LINE}
            r={maybe ? 3.5 : 4}
          />
        );
      })}
    </g>
  );
}
