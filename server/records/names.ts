/** Which dog a name means today. */
import type { Dog } from '../model.ts';
import { dogNamed } from '../notes/names.ts';

/** The call name of now for a call name, a former name or an alias, whatever its letter case; a name nobody bears stays as it is. */
export function currentName(dogs: Dog[], name: string): string {
  return dogNamed(dogs, name)?.name ?? name;
}
