/** Findings that are open, a line each, under their dogs: who should not run without a look. */
import type { Episode } from '../api.ts';
import { units } from '../status.ts';
import { openByDog, sinceWords, stateWords, timesWords, whatWords } from './words.ts';

/** One open finding in words: where, what, since when, which time it is. */
export function EpisodeLine({ episode, on }: { episode: Episode; on: string }) {
  const { name, signs } = whatWords(episode);
  const again = [timesWords(episode), sinceWords(episode, units.value)].filter(Boolean).join(', ');
  return (
    <>
      <strong>{name}</strong>
      {signs && ` · ${signs}`} · {stateWords(episode, on)}
      {again && ` · ${again}`}
    </>
  );
}

interface Props {
  episodes: readonly Episode[];
  on: string;
  title: string;
  id: string;
  /** What is said where none is open; nothing when left out. */
  none?: string;
}
/** A section of its own, dog by dog; an episode leads to the note it was told in last. */
export function OpenList({ episodes, on, title, id, none }: Props) {
  const dogs = [...openByDog(episodes)];
  if (dogs.length === 0 && none === undefined) return null;
  return (
    <section class="openlist stack" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {dogs.length === 0 && <p class="hush">{none}</p>}
      {dogs.length > 0 && (
        <ul class="opendogs">
          {dogs.map(([dog, mine]) => (
            <li key={dog}>
              <a class="dogname" href={`/dogs/${mine[0]?.dogId}`}>
                {dog}
              </a>
              <ul class="sayings">
                {mine.map((episode) => (
                  <li key={episode.id}>
                    <EpisodeLine episode={episode} on={on} />{' '}
                    <a class="small" href={`/review/${episode.seen.at(-1)?.note}`}>
                      the note
                    </a>
                  </li>
                ))}
              </ul>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
