/**
 * The parts of a spreadsheet file (Office Open XML, ECMA-376 part 1, SpreadsheetML) that stay the same, and how a text
 * is written in them.
 */
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELS = 'http://schemas.openxmlformats.org/package/2006/relationships';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const SHEET = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** A style's place in styles.xml. */
export const STYLE = { plain: 0, head: 1, day: 2, wrapped: 3 } as const;

const XML: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
/** Characters that XML 1.0 does not know, or whose line breaks a reader would change; halves of a pair among them. */
const NOT_IN_XML =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that XML can't hold.
  /[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** A text for XML. What XML can't hold is written _xHHHH_, and what looks so by itself is escaped (ECMA-376, 22.9.2.19 ST_Xstring). */
export function xmlText(text: string): string {
  return text
    .replace(/_(?=x[0-9a-fA-F]{4}_)/g, '_x005F_')
    .replace(NOT_IN_XML, (c) => `_x${c.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`)
    .replace(/[&<>"]/g, (c) => XML[c] as string);
}

/** The letters of a column: 0 is A, 26 is AA. */
export function columnLetters(index: number): string {
  let letters = '';
  for (let n = index + 1; n > 0; n = Math.floor((n - 1) / 26))
    letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
  return letters;
}

export function contentTypes(sheets: number): string {
  const parts = Array.from(
    { length: sheets },
    (_, i) => `<Override PartName="/xl/worksheets/sheet${i + 1}.xml" ContentType="${SHEET}.worksheet+xml"/>`,
  );
  return (
    `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
    '<Default Extension="xml" ContentType="application/xml"/>' +
    `<Override PartName="/xl/workbook.xml" ContentType="${SHEET}.sheet.main+xml"/>` +
    `<Override PartName="/xl/styles.xml" ContentType="${SHEET}.styles+xml"/>${parts.join('')}</Types>`
  );
}

export function rootRels(): string {
  return `${HEAD}<Relationships xmlns="${RELS}"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`;
}

export function workbook(names: readonly string[]): string {
  const sheets = names.map((name, i) => `<sheet name="${xmlText(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`);
  return `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${sheets.join('')}</sheets></workbook>`;
}

export function workbookRels(sheets: number): string {
  const parts = Array.from(
    { length: sheets },
    (_, i) => `<Relationship Id="rId${i + 1}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
  );
  return `${HEAD}<Relationships xmlns="${RELS}">${parts.join('')}<Relationship Id="rId${sheets + 1}" Type="${OFFICE}/styles" Target="styles.xml"/></Relationships>`;
}

/** Plain; bold for the heads; a day as 2027-01-14; wrapped for long texts. */
export function styles(): string {
  const font = (bold: string) => `<font>${bold}<sz val="11"/><name val="Calibri"/><family val="2"/></font>`;
  const xf = (more: string) => `<xf borderId="0" fillId="0" xfId="0" ${more}`;
  return (
    `${HEAD}<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/></numFmts>` +
    `<fonts count="2">${font('')}${font('<b/>')}</fonts>` +
    '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
    '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>' +
    '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="4">' +
    `${xf('numFmtId="0" fontId="0"/>')}${xf('numFmtId="0" fontId="1" applyFont="1"/>')}` +
    `${xf('numFmtId="164" fontId="0" applyNumberFormat="1"/>')}` +
    `${xf('numFmtId="0" fontId="0" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf>')}` +
    '</cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>'
  );
}

/** Before the first row: the head stays in sight, columns as wide as asked for (in characters). */
export function sheetStart(widths: readonly number[]): string {
  const cols = widths.map((width, i) => `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`);
  return (
    `${HEAD}<worksheet xmlns="${MAIN}"><sheetViews><sheetView workbookViewId="0">` +
    '<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>' +
    `<cols>${cols.join('')}</cols><sheetData>`
  );
}

/** Behind the last row: a filter on every column. */
export function sheetEnd(columns: number, rows: number): string {
  return `</sheetData><autoFilter ref="A1:${columnLetters(columns - 1)}${Math.max(1, rows)}"/></worksheet>`;
}
