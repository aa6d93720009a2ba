/** One dog's events along the way into its stretches: where it stood, from where to where, and how far it went. */
import type { LeftRight, Position } from '../../grammar/entry.ts';
import type { Course, Place } from './course.ts';
import type { DogEvent } from './events.ts';
import type { Stretch } from './types.ts';

/** What does not fit together in one dog's events, for a conflict. */
export interface Clash {
  how: 'two-places' | 'told-otherwise' | 'out-twice' | 'unlisted' | 'unknown-place';
  event: DogEvent;
  /** The earlier event it clashes with. */
  with?: DogEvent;
}

export interface DogWay {
  stretches: Stretch[];
  metres?: number;
  byPosition: Partial<Record<Position | 'unknown', number>>;
  bySide: Partial<Record<LeftRight | 'unknown', number>>;
  left?: { manner: 'dropped' | 'loaded'; atMetres?: number };
  /** From where to where it was in the team. */
  spells: { from?: number; to?: number }[];
  clashes: Clash[];
}

/** Closer than this two places are one, metres. */
const SAME_PLACE = 1;

/** Works a dog's events out. Nothing goes back on the way, and nothing beyond its end. */
export function wayOf(events: readonly DogEvent[], course: Course): DogWay {
  const way = new Way(course);
  for (const event of events) way.take(event);
  return way.done();
}

interface Spell {
  from: Place;
  to?: Place;
  stretches: Open[];
}
interface Open {
  position?: Position;
  side?: LeftRight;
  from: Place;
  to?: Place;
  opened: DogEvent;
}

class Way {
  private readonly spells: Spell[] = [];
  private readonly clashes: Clash[] = [];
  private left: DogEvent | undefined;
  /** The farthest place so far; later events are not before it. */
  private reached = 0;

  constructor(private readonly course: Course) {}

  take(event: DogEvent): void {
    const spell = this.spells.at(-1);
    const current = spell && !spell.to ? spell.stretches.at(-1) : undefined;
    if (event.what === 'out') this.out(event, spell, current);
    else if (!spell) this.comeIn(event);
    else if (event.back && event.what === 'hitch') this.compare(event);
    else if (!current) this.open(event, this.reach(event));
    else this.change(event, spell, current);
  }

  /** First told: from the start when it had been in the team in a place nobody told, else where it is told. */
  private comeIn(event: DogEvent): void {
    if (!event.wasIn) {
      this.open(event, this.reach(event));
      return;
    }
    const spell = this.open({ ...event, position: undefined, side: undefined }, { metres: 0, estimated: true });
    this.change(event, spell, spell.stretches[0] as Open);
  }

  private open(event: DogEvent, from: Place): Spell {
    if (from.metres === undefined) this.clashes.push({ how: 'unknown-place', event });
    const spell: Spell = { from, stretches: [stretch(event, from)] };
    this.spells.push(spell);
    this.left = undefined;
    return spell;
  }

  private change(event: DogEvent, spell: Spell, current: Open): void {
    const samePosition = event.position === undefined || event.position === current.position;
    const sameSide = event.side === undefined || event.side === current.side;
    if (samePosition && sameSide) return;
    const from = this.reach(event);
    const here =
      from.metres !== undefined && from.metres - (current.from.metres ?? Number.NEGATIVE_INFINITY) <= SAME_PLACE;
    // A place told more closely, or told anew on the spot, stands in for what was told before.
    const closer =
      event.what === 'hitch' &&
      (current.position === undefined || samePosition) &&
      (current.side === undefined || event.side === undefined || current.side === event.side);
    if (closer || here) {
      const otherwise = event.what === 'hitch' && !closer && current.opened.told.item === event.told.item;
      if (otherwise) this.clashes.push({ how: 'two-places', event, with: current.opened });
      if (!samePosition && !closer) current.side = undefined;
      if (event.position) current.position = event.position;
      if (event.side) current.side = event.side;
      return;
    }
    if (from.metres === undefined) this.clashes.push({ how: 'unknown-place', event });
    current.to = from;
    spell.stretches.push(stretch({ ...event, position: event.position ?? current.position }, from));
  }

  private out(event: DogEvent, spell: Spell | undefined, current: Open | undefined): void {
    if (event.unlisted) this.clashes.push({ how: 'unlisted', event });
    if (!spell) {
      const opened = this.open({ ...event, what: 'hitch', position: undefined, side: undefined }, { metres: 0 });
      this.close(opened, event);
    } else if (current) this.close(spell, event);
    else this.outAgain(event, spell);
  }

  private close(spell: Spell, event: DogEvent): void {
    const to = this.reach(event);
    if (to.metres === undefined) this.clashes.push({ how: 'unknown-place', event });
    spell.to = to;
    (spell.stretches.at(-1) as Open).to = to;
    this.left = event;
  }

  /** Told again that it is out: the place told with its mark is better than one worked out; two told apart do not fit. */
  private outAgain(event: DogEvent, spell: Spell): void {
    const { metres, estimated } = event.place;
    const was = spell.to as Place;
    if (metres === undefined || estimated || event.manner !== this.left?.manner) return;
    if (was.metres === undefined || was.estimated) {
      const last = spell.stretches.at(-1) as Open;
      const to = { metres: Math.max(metres, last.from.metres ?? 0) };
      spell.to = to;
      last.to = to;
      this.reached = to.metres;
      const open = this.clashes.findIndex((clash) => clash.how === 'unknown-place' && clash.event === this.left);
      if (open >= 0) this.clashes.splice(open, 1);
      this.left = event;
    } else if (Math.abs(was.metres - metres) > 100)
      this.clashes.push({ how: 'out-twice', event, ...(this.left ? { with: this.left } : {}) });
  }

  /** A line-up told over afterwards adds what was not said; where it says otherwise it is a clash, and what was told first stands. */
  private compare(event: DogEvent): void {
    const all = this.spells.flatMap((spell) => spell.stretches);
    const alike = all.find((one) => event.position === undefined || one.position === event.position);
    if (alike) {
      alike.side ??= event.side;
      return;
    }
    const unsaid = all.find((one) => one.position === undefined);
    if (unsaid) {
      unsaid.position = event.position;
      unsaid.side ??= event.side;
    } else this.clashes.push({ how: 'told-otherwise', event, ...(all[0] ? { with: all[0].opened } : {}) });
  }

  /** The place of an event, not before the last one and not beyond the end. */
  private reach(event: DogEvent): Place {
    const { metres, estimated } = event.place;
    if (metres === undefined) return {};
    this.reached = Math.min(Math.max(metres, this.reached), this.course.length ?? Number.POSITIVE_INFINITY);
    return estimated ? { metres: this.reached, estimated: true } : { metres: this.reached };
  }

  done(): DogWay {
    const end: Place = this.course.length === undefined ? {} : { metres: this.course.length };
    for (const spell of this.spells) {
      spell.to ??= end;
      for (const one of spell.stretches) one.to ??= end;
    }
    const way: DogWay = { stretches: [], byPosition: {}, bySide: {}, spells: [], clashes: this.clashes };
    let known = this.spells.length > 0;
    for (const spell of this.spells) {
      const from = spell.from.metres;
      const to = spell.to?.metres;
      way.spells.push({ ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) });
      if (from === undefined || to === undefined) known = false;
    }
    way.stretches = shown(this.spells, this.left === undefined);
    if (known) addUp(way, this.spells);
    if (this.left) {
      const at = this.spells.at(-1)?.to?.metres;
      way.left = { manner: this.left.manner ?? 'loaded', ...(at === undefined ? {} : { atMetres: at }) };
    }
    return way;
  }
}

function stretch(event: DogEvent, from: Place): Open {
  const { position, side } = event;
  return { ...(position ? { position } : {}), ...(side ? { side } : {}), from, opened: event };
}

/** The stretches as a record shows them; one of no length is left out beside others, but for the place a dog stands in now. */
function shown(spells: readonly Spell[], stillIn: boolean): Stretch[] {
  const all = spells.flatMap((spell) => spell.stretches);
  const now = stillIn ? all.at(-1) : undefined;
  const long = all.filter((one) => lengthOf(one) !== 0 || one === now);
  return (long.length > 0 ? long : all.slice(-1)).map((one): Stretch => {
    const { position, side, from, to } = one;
    return {
      ...(position ? { position } : {}),
      ...(side ? { side } : {}),
      ...(from.metres === undefined ? {} : { fromMetres: from.metres }),
      ...(to?.metres === undefined ? {} : { toMetres: to.metres }),
      ...(from.estimated || to?.estimated ? { estimated: true } : {}),
    };
  });
}

function lengthOf({ from, to }: Open): number | undefined {
  return from.metres === undefined || to?.metres === undefined ? undefined : to.metres - from.metres;
}

/** Metres by position and side. What of a spell can't be told apart, because a change in it has no place, is 'unknown'. */
function addUp(way: DogWay, spells: readonly Spell[]): void {
  const add = <K extends string>(sums: Partial<Record<K, number>>, key: K, metres: number) => {
    if (metres > 0) sums[key] = (sums[key] ?? 0) + metres;
  };
  let total = 0;
  for (const spell of spells) {
    const whole = (spell.to?.metres ?? 0) - (spell.from.metres ?? 0);
    let told = 0;
    for (const one of spell.stretches) {
      const metres = lengthOf(one);
      if (metres === undefined) continue;
      told += metres;
      add(way.byPosition, one.position ?? 'unknown', metres);
      add(way.bySide, one.side ?? 'unknown', metres);
    }
    // Stretches that lie end to end add up to the spell but for the last digit of the sum.
    const rest = spell.stretches.every((one) => lengthOf(one) !== undefined) ? 0 : Math.max(0, whole - told);
    add(way.byPosition, 'unknown', rest);
    add(way.bySide, 'unknown', rest);
    total += whole;
  }
  way.metres = total;
}
