/**
 * A cell that a spreadsheet would run as a formula, made harmless in a way that can be undone.
 *
 * Spreadsheets run a cell of a CSV file that begins with = + - @, a tab or a carriage return (OWASP, "CSV Injection"; the
 * full-width forms of the four signs and a line feed are in its list too). Such a text gets an apostrophe put in front,
 * which spreadsheets take as "this is text". So that the apostrophe can be taken away again without a doubt, a text that
 * already looks like an escaped one gets another: the rule is one to one. Spaces and apostrophes before the sign are
 * looked through, because some programs trim a cell before they read it.
 *
 * Numbers, days and true/false are written by this program, not by a person; a negative number stays a number.
 */
const WOULD_RUN = /^[\s']*[=+\-@＝＋－＠]|^[ ']*[\t\r\n]/u;
const ESCAPED = /^'(?:[\s']*[=+\-@＝＋－＠]|[ ']*[\t\r\n])/u;

/** The text as it is written in a cell: with an apostrophe in front where a spreadsheet might run it. */
export function harmless(text: string): string {
  return WOULD_RUN.test(text) ? `'${text}` : text;
}

/** The text that `harmless` was given: takes its apostrophe away, and leaves every other text as it is. */
export function asSaid(cell: string): string {
  return ESCAPED.test(cell) ? cell.slice(1) : cell;
}

/** How to undo it, for whoever reads the files without this program. */
export const ABOUT_ESCAPE =
  'A text that a spreadsheet might run as a formula (it begins with = + - @, a tab or a line break, with or without ' +
  "spaces and apostrophes before it) has one apostrophe (') put in front. To have the text as it was said, take that one " +
  'apostrophe away: from every text that begins with an apostrophe followed by such a sign, again with or without ' +
  'spaces and apostrophes between. No other text was changed.';
