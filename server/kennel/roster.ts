/**
 * Changes of the roster and of the people, as pure functions: a kennel in, the next kennel out. A name belongs to one
 * dog alone, be it a call name, an alias, a former name or a form that a recogniser writes.
 */
import type { Dog, Kennel, Person } from '../model.ts';
import { fold } from '../notes/names.ts';
import { Refusal } from '../notes/refusal.ts';

export interface NewDog {
  name: string;
  sex: 'F' | 'M';
  aliases?: string[];
  heard?: string[];
  born?: string;
  retired?: boolean;
}
/** `born: null` takes the day of birth away; what is left out stays. */
export type DogChange = Partial<Omit<NewDog, 'born'>> & { born?: string | null };

/** @throws Refusal conflict when a name is another dog's. */
export function addDog(kennel: Kennel, input: NewDog, id: string): [Kennel, Dog] {
  const { born, ...rest } = input;
  const dog: Dog = tidy({
    id,
    aliases: [],
    heard: [],
    retired: false,
    ...rest,
    formerNames: [],
    ...(born ? { born } : {}),
  });
  refuseTaken(kennel.dogs, dog);
  return [{ ...kennel, dogs: [...kennel.dogs, dog] }, dog];
}

/**
 * The dog changed. After a rename the old name stays the dog's, so that entries accepted under it do; a dog that takes
 * an old name up again has the name between as its former one.
 * @throws Refusal not-found, or conflict when a name is another dog's.
 */
export function changeDog(kennel: Kennel, id: string, change: DogChange): [Kennel, Dog] {
  const old = dogOf(kennel, id);
  const { born, ...rest } = change;
  const { born: bornBefore, ...before } = old;
  const renamed = rest.name !== undefined && rest.name !== old.name;
  const formerNames = renamed ? [...old.formerNames.filter((name) => name !== rest.name), old.name] : old.formerNames;
  const bornNow = born === undefined ? bornBefore : born;
  const dog = tidy({ ...before, ...rest, formerNames, ...(bornNow ? { born: bornNow } : {}) });
  refuseTaken(kennel.dogs, dog);
  const learned = kennel.learned.filter((l) => l.dog !== id || !dog.heard.some((form) => fold(form) === fold(l.heard)));
  return [{ ...kennel, dogs: kennel.dogs.map((d) => (d.id === id ? dog : d)), learned }, dog];
}

/** One more form of the name that a recogniser writes. Learning a form twice changes nothing. */
export function learnHeard(kennel: Kennel, id: string, heard: string): [Kennel, Dog] {
  const dog = dogOf(kennel, id);
  if (dog.heard.some((form) => fold(form) === fold(heard))) return [kennel, dog];
  return changeDog(kennel, id, { heard: [...dog.heard, heard] });
}

/**
 * The kennel without the dog. `entries` is how many entries of reviewed notes name it.
 * @throws Refusal not-found, or conflict when there are any: a dog with entries retires.
 */
export function removeDog(kennel: Kennel, id: string, entries: number): [Kennel, Dog] {
  const dog = dogOf(kennel, id);
  if (entries > 0)
    throw new Refusal(
      'conflict',
      `${dog.name} stands in ${entries === 1 ? 'one entry' : `${entries} entries`} of reviewed notes, which would lose their dog. ` +
        `Retire ${dog.name} instead: the entries stay, and the dog is no longer offered.`,
      `${dog.name} was left as it was.`,
    );
  const dogs = kennel.dogs.filter((d) => d.id !== id);
  return [{ ...kennel, dogs, learned: kennel.learned.filter((l) => l.dog !== id) }, dog];
}

/** @throws Refusal conflict when somebody has the name. */
export function addPerson(kennel: Kennel, name: string, id: string): [Kennel, Person] {
  const person: Person = { id, name };
  refuseTakenPerson(kennel, person);
  return [{ ...kennel, people: [...kennel.people, person] }, person];
}

/**
 * The person renamed. `notes` is how many notes name them: those would no longer be theirs.
 * @throws Refusal not-found, or conflict when somebody has the name or notes have the old one.
 */
export function renamePerson(kennel: Kennel, id: string, name: string, notes: number): [Kennel, Person] {
  const old = personOf(kennel, id);
  if (old.name === name) return [kennel, old];
  const person: Person = { ...old, name };
  refuseTakenPerson(kennel, person);
  if (notes > 0)
    throw new Refusal('conflict', `${namedIn(old.name, notes)}; under another name they would be nobody’s.`);
  return [{ ...kennel, people: kennel.people.map((p) => (p.id === id ? person : p)) }, person];
}

/**
 * The person retired, or back again: notes keep the name, new ones are no longer read with it.
 * @throws Refusal not-found
 */
export function retirePerson(kennel: Kennel, id: string, retired: boolean): [Kennel, Person] {
  const { retired: was, ...old } = personOf(kennel, id);
  if (retired === (was ?? false)) return [kennel, personOf(kennel, id)];
  const person: Person = retired ? { ...old, retired } : old;
  return [{ ...kennel, people: kennel.people.map((p) => (p.id === id ? person : p)) }, person];
}

/** @throws Refusal not-found, or conflict when notes name the person. */
export function removePerson(kennel: Kennel, id: string, notes: number): [Kennel, Person] {
  const person = personOf(kennel, id);
  if (notes > 0)
    throw new Refusal(
      'conflict',
      `${namedIn(person.name, notes)}, so the name stays in the list. Retire ${person.name} instead.`,
    );
  return [{ ...kennel, people: kennel.people.filter((p) => p.id !== id) }, person];
}

const namedIn = (name: string, notes: number) => `${name} stands in ${notes === 1 ? 'one note' : `${notes} notes`}`;

export function dogOf(kennel: Kennel, id: string): Dog {
  const dog = kennel.dogs.find((d) => d.id === id);
  if (!dog) throw new Refusal('not-found', 'There is no dog of this id in the roster.');
  return dog;
}

export function personOf(kennel: Kennel, id: string): Person {
  const person = kennel.people.find((p) => p.id === id);
  if (!person) throw new Refusal('not-found', 'There is no person of this id in the list.');
  return person;
}

/** Each name once: what the dog is called now is no alias, and what is an alias is no heard form. */
function tidy(dog: Dog): Dog {
  const seen = new Set([fold(dog.name)]);
  const once = (names: string[]) =>
    names.filter((name) => {
      if (seen.has(fold(name))) return false;
      seen.add(fold(name));
      return true;
    });
  const aliases = once(dog.aliases);
  // Former names stay whatever the aliases are, and so does one that differs in letter case alone: entries are spelled so.
  const formerNames = dog.formerNames.filter((name, i, all) => name !== dog.name && all.indexOf(name) === i);
  for (const name of formerNames) seen.add(fold(name));
  return { ...dog, aliases, formerNames, heard: once(dog.heard) };
}

function refuseTaken(dogs: readonly Dog[], dog: Dog): void {
  for (const name of [dog.name, ...dog.aliases, ...dog.formerNames, ...dog.heard])
    for (const other of dogs) {
      if (other.id === dog.id) continue;
      const how = holds(other, name);
      if (how)
        throw new Refusal('conflict', `“${name}” is taken: ${how}. Two dogs can’t share a name; choose another.`);
    }
}

/** How a dog holds a name, as part of a sentence. */
function holds(dog: Dog, name: string): string | undefined {
  const among = (names: string[]) => names.some((n) => fold(n) === fold(name));
  if (fold(dog.name) === fold(name))
    return `a dog in the roster is called ${dog.name}${dog.retired ? ' (retired)' : ''}`;
  if (among(dog.aliases)) return `${dog.name} is called that too`;
  if (among(dog.formerNames)) return `${dog.name} was called that before, and has entries under it`;
  if (among(dog.heard)) return `it is learned as a way ${dog.name} is heard`;
  return undefined;
}

function refuseTakenPerson(kennel: Kennel, person: Person): void {
  const other = kennel.people.find((p) => p.id !== person.id && fold(p.name) === fold(person.name));
  if (other)
    throw new Refusal('conflict', `${other.name} is in the list already; choose a name that tells the two apart.`);
}
