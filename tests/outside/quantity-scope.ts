/**
 * Which rows of the external quantity sets lie outside what a musher's notes hold, and why. A row is judged by what kind
 * of thing it asks for, never by its identity.
 */
export interface Row {
  id: string;
  set: 'recognizers-text' | 'duckling';
  dim: string;
  text: string;
  expect: unknown;
}

/** The reference sets' unit names, in ours. A unit that is missing here is none of the trade's. */
export const UNIT_NAMES: Record<string, string> = {
  Mile: 'mi',
  Kilometre: 'km',
  Metre: 'm',
  Meter: 'm',
  Centimetre: 'cm',
  Millimetre: 'mm',
  Millimeter: 'mm',
  Inch: 'in',
  Foot: 'ft',
  Yard: 'yd',
  Pound: 'lb',
  Ounce: 'oz',
  Kilogram: 'kg',
  Gram: 'g',
  Litre: 'l',
  Millilitre: 'ml',
  Milliliter: 'ml',
  Cup: 'cup',
  Pint: 'pt',
  Quart: 'qt',
  Gallon: 'gal',
  'Kilometer per hour': 'km/h',
  'Mile per hour': 'mph',
  F: 'F',
  C: 'C',
  Fahrenheit: 'F',
  Celsius: 'C',
};

interface Item {
  value?: string | number | null;
  unit?: string;
  text?: string;
  type?: string;
}
const items = (row: Row): Item[] => (Array.isArray(row.expect) ? (row.expect as Item[]) : [row.expect as Item]);
const isNumberRow = (row: Row) => row.dim === 'number' || row.dim === 'numeral';

/** Reason → the rows it takes out. The first that fits counts. */
const REASONS: readonly { why: string; fits: (row: Row) => boolean }[] = [
  {
    why: 'next, last, previous: an order, but no number is said',
    fits: (row) => row.dim === 'ordinal' && items(row).some((item) => item.type === 'ordinal.relative'),
  },
  {
    why: 'letters and words for thousands and millions in money (K, M, G, b, mil) and in Indian numbering (lakh, crore); a k is a kilometre here',
    fits: (row) =>
      (isNumberRow(row) && /\d ?(k|m|g|b|mm|mil)\b/i.test(row.text)) ||
      /\b(lakh|lkhs?|crore|cr|koti)\b/i.test(row.text),
  },
  { why: 'powers and scientific notation', fits: (row) => /\^|\de[-+]?\d/i.test(row.text) },
  {
    why: 'units that the trade does not use (areas, tons, barrels, bits, decimetres, micrograms, hectolitres, angles, quarters of a year)',
    fits: (row) =>
      ['dimension', 'distance', 'volume', 'quantity'].includes(row.dim)
        ? items(row).some((item) => item.unit !== undefined && item.unit !== 'Unnamed' && !UNIT_NAMES[item.unit])
        : items(row).some((item) => item.unit === 'Quarter' || /business/.test(item.text ?? '')),
  },
  {
    why: 'lengths that name a unit but no number (all year, whole day)',
    fits: (row) => row.dim === 'duration' && /\b(all|full|whole)[ -](day|week|month|year)/.test(row.text),
  },
  { why: 'few, single: the contract guesses no number', fits: (row) => /\b(few|single)\b/.test(row.text) },
  { why: 'prime marks, which are feet, inches, minutes and seconds alike', fits: (row) => /\d('|")/.test(row.text) },
  {
    why: 'amounts added up over a comma, which in a note parts two facts',
    fits: (row) => ['distance', 'duration'].includes(row.dim) && /[a-z], \d/.test(row.text),
  },
  { why: 'time zones', fits: (row) => row.dim === 'clock' && /\b(gmt|bst|pst|ist)\b/i.test(row.text) },
  {
    why: 'hours with an h and neither "at" nor "in": a length of time here (4h15)',
    fits: (row) => row.dim === 'clock' && /(?<!\b(at|in) |\d[:/])\b\d{1,2}h(\d\d)?\b/i.test(row.text),
  },
  {
    why: 'parts of the day that name no hour (mid morning, lunchtime)',
    fits: (row) => row.dim === 'clock' && /mid[ -](morning|afternoon)|lunchtime/.test(row.text),
  },
  {
    why: 'spans that take in words around the amount (more than …, in the afternoon at …)',
    fits: (row) =>
      Array.isArray(row.expect) && items(row).some((item) => /^(more than|in the|afternoon)\b/.test(item.text ?? '')),
  },
  {
    why: 'years and months, whose length is no fixed number of minutes, and numbers read without their unit',
    fits: (row) =>
      (row.dim === 'duration' && items(row).some((item) => item.unit === 'Month')) ||
      (row.dim === 'number' && /\d years\b/.test(row.text)),
  },
];

/** Why the row is out of scope; undefined when it counts. */
export function outOfScope(row: Row): string | undefined {
  return REASONS.find((reason) => reason.fits(row))?.why;
}
