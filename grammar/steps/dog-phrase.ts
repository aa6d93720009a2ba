/** A phrase of the note that speaks of dogs, and a person named in it. */

export interface DogPhrase {
  /** Token range, end exclusive; a possessive ending belongs to it. */
  from: number;
  to: number;
  kind: 'names' | 'group' | 'pronoun';
  /** Group or pronoun as the lexicon names it. */
  value?: string;
  /** Call names; filled for groups and pronouns when they are resolved. */
  dogs: string[];
  /** Names that are listed with a group: "leaders and Tansy". */
  also?: string[];
  groups?: string[];
  /** How many are meant ("those three"). */
  count?: number;
  /** "'s", "his", "their". */
  possessive: boolean;
  /** "nobody", "neither": what is said is denied. */
  negative: boolean;
  /** Stands beside another dog ("with June", "growling at him"): not the one spoken of. */
  company: boolean;
  /** Taken out of a group ("everyone but Moss"). */
  excepted: boolean;
  /** Excepted after the group's own statement: what follows is said of the exception ("all ate exc Nemo - walked off"). */
  owns?: boolean;
  /** Phrase whose dogs are taken out of this one. */
  except?: DogPhrase;
  /** The preposition right before it. */
  prep?: string;
  /** Only those of the group that stand there: "the girls in swing", "the other dogs on the left". */
  place?: string;
  onSide?: string;
  /** One dog of the group is meant. */
  single?: boolean;
  /** "Feet: …, everyone else clean": the rest of those told behind this token. */
  since?: number;
  /** Eating and drinking is told of them. */
  eats?: boolean;
  /** Named only beside: "climbs in Waylon's lap", "growls at Gus". */
  aside?: boolean;
  /** Why the reading is in doubt, in words. */
  doubt?: string;
  /** The reading is not to be taken without a second look. */
  much?: boolean;
}

/** A person's name in the note. */
export interface PersonMention {
  from: number;
  to: number;
  name: string;
  possessive: boolean;
}

/**
 * A phrase as it is found, before company and exceptions are seen. Written out so that every phrase has the same fields
 * in the same order: objects of one shape are made and read many times faster than those that a spread builds up.
 */
export function phraseOf(
  from: number,
  to: number,
  kind: DogPhrase['kind'],
  dogs: string[],
  possessive: boolean,
): DogPhrase {
  return {
    from,
    to,
    kind,
    value: undefined,
    dogs,
    also: undefined,
    groups: undefined,
    count: undefined,
    possessive,
    negative: false,
    company: false,
    excepted: false,
    owns: undefined,
    except: undefined,
    prep: undefined,
    place: undefined,
    onSide: undefined,
    single: undefined,
    since: undefined,
    eats: undefined,
    aside: undefined,
    doubt: undefined,
    much: undefined,
  };
}
