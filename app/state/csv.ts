/** A table as a spreadsheet opens it: comma-separated values as RFC 4180 has them. */

/** A cell that a spreadsheet would take for a formula, by its first character; a figure below zero is none. */
const FORMULA = /^[=+\-@＝＋－＠\t\r\n]/u;
const FIGURE = /^-?\d+(?:[.,]\d+)?$/;

/**
 * Rows of cells as one text. A text that a spreadsheet would take for a formula gets an apostrophe before it, so that it is
 * shown and never worked out.
 * @param separator a semicolon where the decimal sign is a comma, as spreadsheets have it there
 */
export const csvOf = (rows: readonly (readonly string[])[], separator: ',' | ';' = ','): string =>
  rows.map((row) => `${row.map((text) => cell(text, separator)).join(separator)}\r\n`).join('');

function cell(text: string, separator: string): string {
  if (FIGURE.test(text) && !text.includes(separator)) return text;
  const safe = FORMULA.test(text) && !FIGURE.test(text) ? `'${text}` : text;
  // Both separators: a spreadsheet that takes the other one must find no cell within a cell.
  const isPlain = !/[",;\r\n]|^\s|\s$/.test(safe);
  return isPlain ? safe : `"${safe.replaceAll('"', '""')}"`;
}
