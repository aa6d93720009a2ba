/**
 * The fields of an entry's form, read out of the Zod schemas in grammar/entry.ts. Nothing about an entry is defined here
 * again: a field or value added there stands in the form.
 */
import { type Entry, entrySchema, type Kind, PARTS_WITH_END } from '../../grammar/entry.ts';
import type { Units } from '../units.ts';

/** One field of a kind, apart from dogs, assertion and what the reading adds. */
export interface Field {
  name: string;
  type: 'choice' | 'several' | 'number' | 'time' | 'text';
  /** May be left unsaid. */
  optional: boolean;
  /** The values of `choice` and `several`. */
  values: readonly string[];
  /** Least number allowed, where there is one. */
  min?: number;
}
/** What the form holds while it is filled in: text as typed, lists as chosen. */
export type FormState = Record<string, string | string[]>;

/** Fields every entry has; dogs and assertion have their own parts of the form, the others are made by the reading. */
const COMMON = new Set(['kind', 'dogs', 'assertion', 'span', 'rule', 'doubt', 'because']);

/** The parts of a Zod schema that are looked at. */
interface Looked {
  def: { type: string; innerType?: Looked; element?: Looked; pattern?: RegExp };
  options?: readonly string[];
  minValue?: number | null;
  format?: string | null;
}

function fieldOf(name: string, schema: Looked): Field {
  const optional = schema.def.type === 'optional';
  const inner = (optional ? schema.def.innerType : schema) as Looked;
  const field = { name, optional, values: [] };
  switch (inner.def.type) {
    case 'enum':
      return { ...field, type: 'choice', values: inner.options ?? [] };
    case 'array':
      return { ...field, type: 'several', values: inner.def.element?.options ?? [] };
    case 'number':
      return {
        ...field,
        type: 'number',
        min: Number.isFinite(inner.minValue) ? (inner.minValue as number) : undefined,
      };
    case 'string':
      return { ...field, type: inner.format === 'regex' ? 'time' : 'text' };
    default:
      throw new Error(`The form has no field for ${name}, a ${inner.def.type}.`);
  }
}

const FIELDS = new Map<Kind, Field[]>(
  entrySchema.options.map((schema) => [
    schema.shape.kind.value,
    Object.entries(schema.shape)
      .filter(([name]) => !COMMON.has(name))
      .map(([name, field]) => fieldOf(name, field as unknown as Looked)),
  ]),
);
/** Every kind, in the contract's order. */
export const KINDS: readonly Kind[] = [...FIELDS.keys()];
export const fieldsOf = (kind: Kind): Field[] => FIELDS.get(kind) ?? [];

/** Kinds that are seldom about a dog; their form asks for dogs last. */
export const WITHOUT_DOGS: ReadonlySet<Kind> = new Set<Kind>([
  'distance',
  'clock',
  'duration',
  'speed',
  'temperature',
  'wind',
  'weather',
  'trail',
]);

const withEnd = new Set<string>(PARTS_WITH_END);
/** Whether a field is asked for as the form stands: front or hind goes only with parts that need the word. */
export function isAsked(field: Field, state: FormState): boolean {
  return field.name !== 'end' || withEnd.has(String(state.part ?? '')) || Boolean(state.end);
}

/** An entry as a form's state. */
export function toForm(entry: Entry): FormState {
  const state: FormState = { dogs: entry.dogs, assertion: entry.assertion ?? 'present' };
  for (const { name } of fieldsOf(entry.kind)) {
    const value = (entry as Record<string, unknown>)[name];
    if (Array.isArray(value)) state[name] = value.map(String);
    else if (value !== undefined) state[name] = String(value);
  }
  return state;
}

/** Units that stand for themselves where none is chosen yet, by the kennel's habit. */
const USUAL: Record<string, { imperial: string; metric: string }> = {
  distance: { imperial: 'mi', metric: 'km' },
  speed: { imperial: 'mph', metric: 'km/h' },
  temperature: { imperial: 'F', metric: 'C' },
  wind: { imperial: 'mph', metric: 'km/h' },
};

/** The form of another kind, keeping what both have; needed choices start with their first value or the usual unit. */
export function changeKind(kind: Kind, before: FormState, units: Units): FormState {
  const state: FormState = { dogs: before.dogs ?? [], assertion: before.assertion ?? 'present' };
  for (const field of fieldsOf(kind)) {
    const old = before[field.name];
    const fits = typeof old === 'string' && (field.values.length === 0 || field.values.includes(old));
    if (fits) state[field.name] = old;
    else if (field.name === 'unit' && USUAL[kind]) state.unit = USUAL[kind][units];
    else if (field.type === 'choice' && !field.optional) state[field.name] = field.values[0] ?? '';
  }
  return state;
}

/** What the form's state makes: an entry, or a sentence for each field that is wrong. */
export type Made = { entry: Entry } | { wrong: Record<string, string> };

/**
 * Makes the entry. Fields left empty are left out; what the reading had added (span, rule) is kept from `from`, its
 * doubt is not: a person has decided.
 */
export function fromForm(kind: Kind, state: FormState, from?: Entry): Made {
  const raw: Record<string, unknown> = { kind, dogs: state.dogs ?? [] };
  if (from?.span) raw.span = from.span;
  if (from?.rule) raw.rule = from.rule;
  if (state.assertion && state.assertion !== 'present') raw.assertion = state.assertion;
  for (const field of fieldsOf(kind)) {
    const value = state[field.name];
    if (!isAsked(field, state) || value === undefined || value.length === 0) continue;
    raw[field.name] = field.type === 'number' ? numberOf(value) : value;
  }
  const checked = entrySchema.safeParse(raw);
  if (checked.success) return { entry: checked.data };
  const wrong: Record<string, string> = {};
  for (const issue of checked.error.issues) {
    const name = String(issue.path[0] ?? 'kind');
    wrong[name] ??= sentenceFor(
      fieldsOf(kind).find((field) => field.name === name),
      raw[name],
      issue.message,
    );
  }
  return { wrong };
}

/** A typed number; a decimal comma is one as well. */
const numberOf = (value: string | string[]) => Number(String(value).trim().replace(',', '.').replace('−', '-'));

function sentenceFor(field: Field | undefined, value: unknown, message: string): string {
  if (field?.type === 'time') return 'Give a time as hours and minutes, like 16:10.';
  if (field?.type === 'number' && field.min !== undefined && Number(value) < field.min)
    return `Give a number that is not below ${field.min}.`;
  if (field?.type === 'number') return 'Give a number, like 14.5.';
  if (value === undefined) return 'This has to be given.';
  return message;
}
