/** A file's bytes into the state they hold, and back. */
import { type Kennel, kennelSchema, type Season, seasonSchema } from '../model.ts';
import { checkKennel, checkSeason, shapeMark } from './check.ts';
import { SeasonImage } from './image.ts';
import { kennelBytes, provenance, readKennel, readSeason, sealSeason } from './layout.ts';
import { SCHEMA } from './migrate.ts';

/** A state that may still lie in its file's bytes until somebody asks for it. */
export interface Kept<S> {
  readonly state: S;
}

export interface Opened<S> {
  kept: Kept<S>;
  /** `ours`: as this program wrote it. `changed`: something else has changed it since. `other`: without a mark, or another version's. */
  from: 'ours' | 'changed' | 'other';
  /** The schema it had. */
  schema: number;
}

export interface Codec<S> {
  /** @throws UnreadableError, NewerSchemaError */
  open(bytes: Buffer): Opened<S>;
  /** The bytes are good until the next call. */
  bytes(state: S): Uint8Array;
}

let marks: { kennel: string; season: string } | undefined;
const marksOf = () => {
  marks ??= { kennel: shapeMark(kennelSchema), season: shapeMark(seasonSchema) };
  return marks;
};

export function kennelCodec(): Codec<Kennel> {
  const mark = marksOf().kennel;
  return {
    open(bytes) {
      const from = provenance(bytes, mark);
      if (from === 'ours') return { kept: { state: readKennel(bytes) }, from, schema: SCHEMA };
      const checked = checkKennel(bytes);
      return { kept: { state: checked.state }, from, schema: checked.from };
    },
    bytes: (kennel) => kennelBytes(kennel, mark),
  };
}

export class SealedKept implements Kept<Season> {
  #state?: Season;

  constructor(
    /** Ids of the notes, known before the state is. */
    readonly ids: readonly string[],
    private make: (() => Season) | undefined,
  ) {}

  get state(): Season {
    if (!this.#state && this.make) {
      this.#state = this.make();
      this.make = undefined;
    }
    return this.#state as Season;
  }
}

export function seasonCodec(season: string): Codec<Season> {
  const mark = marksOf().season;
  const image = new SeasonImage(mark);
  return {
    open(bytes) {
      const from = provenance(bytes, mark, season);
      const sealed = from === 'ours' ? sealSeason(bytes) : undefined;
      if (sealed) {
        const make = () => {
          const state = readSeason(bytes);
          image.adopt(sealed, state.notes);
          return state;
        };
        return { kept: new SealedKept(sealed.ids, make), from: 'ours', schema: SCHEMA };
      }
      const checked = checkSeason(bytes, season);
      return { kept: { state: checked.state }, from: from === 'ours' ? 'other' : from, schema: checked.from };
    },
    bytes: (state) => image.bytes(state),
  };
}
