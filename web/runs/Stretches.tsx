/** Where each dog pulled, as a bar from the start to the end of the run, and the same in words. */
import type { RunDog } from '../../server/records/types.ts';
import type { Units } from '../units.ts';
import { leftWords, placeOf, stretchesWords } from './team.ts';

/** One dog's bar: each place has its own hatching, named in words beneath. */
export function StretchBar({ dog, metres, units }: { dog: RunDog; metres?: number; units: Units }) {
  const words = [stretchesWords(dog, metres, units), leftWords(dog, units)].filter(Boolean).join(' · ');
  return (
    <div class="stretches">
      <span>{words}</span>
      {metres !== undefined && metres > 0 && (
        <div class="bar" aria-hidden="true">
          {dog.stretches.map((stretch) => {
            if (stretch.fromMetres === undefined) return null;
            const from = (100 * stretch.fromMetres) / metres;
            const to = (100 * Math.min(metres, stretch.toMetres ?? metres)) / metres;
            return (
              <span
                key={`${stretch.fromMetres} ${placeOf(stretch)}`}
                class={`piece ${stretch.position ?? 'unknown'}`}
                style={{ left: `${from}%`, width: `${Math.max(0, to - from)}%` }}
              />
            );
          })}
        </div>
      )}
    </div>
  );
}
