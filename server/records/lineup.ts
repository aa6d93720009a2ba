/** Who is on the gangline at a time, for reading the next note: "everyone", "the leaders", "left side". */
import { type Assertion, type Entry, type Place, POSITIONS } from '../../grammar/entry.ts';
import { type Dog, type Note, settingsSchema } from '../model.ts';
import { toldInFull } from './evidence.ts';
import { holds, person } from './items.ts';
import { currentName } from './names.ts';
import { DAY, dayAt, HOUR, offsetOf, when } from './time.ts';

/** After longer silence than this the team is home; the kennel's own setting may be longer, which here only saves a wrong guess. */
const SILENCE = settingsSchema.parse({}).runGapHours * HOUR;

/**
 * The line-up that a day's earlier notes left on the gangline.
 * @param notes in any order; those of other days, later ones and those set aside are passed over. For a run over midnight
 *   the notes of the day before have to be among them.
 * @param at ISO 8601; without an offset it is compared with the notes' local clocks
 * @param by who speaks: the line-up is of that person's team, also as other people told it
 * @returns places from lead to wheel, left before right; a dog that is loaded, dropped or at home is on none. Entries proposed and
 *   accepted count, since the next note is spoken before anybody reviews.
 */
export function lineupBefore(notes: Note[], at: string, dogs: Dog[], by?: string): Place[] {
  const now = when(at);
  const time = offsetOf(at) === undefined ? 'wall' : 'ms';
  const days = new Set([now.day, dayAt(now.wall - DAY, 0)]);
  const speaker = person(by);
  const earlier = notes
    .filter((note) => !note.aside && days.has(note.at.slice(0, 10)))
    .map((note) => ({ note, at: when(note.at), own: person(note.by) === speaker }))
    .filter((one) => one.at[time] < now[time])
    .sort((a, b) => a.at.ms - b.at.ms || (a.note.id < b.note.id ? -1 : 1));
  const team = new Gangline(dogs, speaker);
  let last: (typeof earlier)[number] | undefined;
  for (const one of earlier) {
    const entries = one.note.entries.filter(({ state }) => state !== 'removed').map(({ entry }) => entry);
    if (one.own) {
      const newDay =
        last !== undefined && last.at.day !== one.at.day && entries.some((entry) => isHere(entry, 'hitch'));
      if (last && (one.at.ms - last.at.ms > SILENCE || newDay)) team.clear();
      last = one;
    }
    team.hear(inOrder(entries), one.own);
  }
  if (last && now[time] - last.at[time] > SILENCE) team.clear();
  return team.places();
}

function isHere<K extends Entry['kind']>(entry: Entry, kind: K): entry is Extract<Entry, { kind: K }> {
  return entry.kind === kind && holds(entry as { assertion?: Assertion });
}

function inOrder(entries: readonly Entry[]): Entry[] {
  const start = (entry: Entry) => entry.span?.[0] ?? Number.MAX_SAFE_INTEGER;
  return [...entries].sort((a, b) => start(a) - start(b));
}

class Gangline {
  private team = new Map<string, Place>();
  /** The team as it came home; after it a few dogs told in their places are the same run told over. */
  private home: Map<string, Place> | undefined;
  /** Hitches told since then, until something shows that a team goes out. */
  private perhaps: Map<string, Place> = new Map();

  constructor(
    private readonly dogs: Dog[],
    private readonly speaker: string,
  ) {}

  clear(): void {
    this.team = new Map();
    this.home = undefined;
    this.perhaps = new Map();
  }

  /** Takes in the entries of one note; of another person's note only what tells of this speaker's team. */
  hear(entries: readonly Entry[], own: boolean): void {
    const hitched = new Map<string, Place>();
    for (const entry of entries) {
      if (isHere(entry, 'hitch')) {
        const mine = entry.driver === undefined ? own : person(entry.driver) === this.speaker;
        for (const dog of this.named(entry.dogs))
          if (mine) hitched.set(dog, placeOf(dog, entry.position, entry.side));
          else if (own) this.team.delete(dog);
      }
    }
    if (hitched.size > 0) this.hitch(hitched);
    if (!own) return;
    for (const entry of entries) {
      if (isHere(entry, 'move')) {
        this.goOut();
        for (const dog of this.named(entry.dogs)) this.team.set(dog, placeOf(dog, entry.position, entry.side));
      } else if (isHere(entry, 'drop')) {
        if (entry.dogs.includes('*')) this.team.clear();
        for (const dog of this.named(entry.dogs)) this.team.delete(dog);
      } else if (isHere(entry, 'clock') && entry.event === 'start') this.goOut();
    }
    if (entries.some((entry) => isHere(entry, 'clock') && entry.event === 'finish')) {
      this.home = this.team;
      this.team = new Map();
      this.perhaps = new Map();
    }
  }

  private hitch(hitched: Map<string, Place>): void {
    if (this.home === undefined) {
      for (const [dog, place] of hitched) this.put(dog, place);
      return;
    }
    for (const [dog, place] of hitched) this.perhaps.set(dog, place);
    const anew = this.home.size > 0 && ![...hitched.keys()].some((dog) => this.home?.has(dog));
    if (anew || toldInFull(new Map([...hitched].map(([dog, place]) => [dog, place.position])))) this.goOut();
  }

  /** A team goes out again after having come home. */
  private goOut(): void {
    if (this.home === undefined) return;
    this.home = undefined;
    for (const [dog, place] of this.perhaps) this.put(dog, place);
    this.perhaps = new Map();
  }

  /** A place told again in part keeps what was told before: "Moss in lead" of a Moss in right lead. */
  private put(dog: string, place: Place): void {
    const was = this.team.get(dog);
    const same = was && (place.position === undefined || place.position === was.position);
    this.team.set(dog, same ? { ...was, ...place } : place);
  }

  private named(dogs: readonly string[]): string[] {
    return dogs.filter((dog) => dog !== '*').map((dog) => currentName(this.dogs, dog));
  }

  places(): Place[] {
    const row = ({ position }: Place) => (position === undefined ? POSITIONS.length : POSITIONS.indexOf(position));
    const side = (place: Place) => (place.side === 'left' ? 0 : place.side === 'right' ? 1 : 2);
    return [...this.team.values()].sort((a, b) => row(a) - row(b) || side(a) - side(b));
  }
}

function placeOf(dog: string, position: Place['position'], side: Place['side']): Place {
  return { dog, ...(position ? { position } : {}), ...(side ? { side } : {}) };
}
