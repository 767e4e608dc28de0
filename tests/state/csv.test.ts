/**
 * Tables for a spreadsheet. The form is RFC 4180 (Y. Shafranovich, October 2005), section 2, read back here by its grammar;
 * which cells a spreadsheet takes for formulas is as OWASP's page on CSV injection lists them: = + - @, their
 * full-width forms, tab, return.
 */
import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { csvOf } from '../../app/state/csv.ts';

/** By the grammar: a field is quoted, with doubled quotes in it, or holds no quote, separator or line end. */
function read(text: string, separator: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (let i = 0; i < text.length; ) {
    let field = '';
    if (text[i] === '"') {
      for (i += 1; text[i] !== '"' || text[i + 1] === '"'; i += text[i] === '"' ? 2 : 1) {
        if (i >= text.length) throw new Error('a quote is not closed');
        field += text[i];
      }
      i += 1;
    } else {
      for (; i < text.length && text[i] !== separator && text[i] !== '\r'; i++) {
        if (text[i] === '"' || text[i] === '\n') throw new Error(`a bare ${text[i]}`);
        field += text[i];
      }
    }
    row.push(field);
    if (text[i] === separator) {
      i += 1;
      if (text.slice(i, i + 2) === '\r\n') row.push('');
    }
    if (text.slice(i, i + 2) === '\r\n') {
      rows.push(row);
      row = [];
      i += 2;
    }
  }
  return rows;
}

const cell = fc.oneof(
  fc.string(),
  fc.constantFrom(
    '=1+1',
    '+A1',
    '-2+3',
    '@SUM(A1)',
    '\t=1',
    '＝1',
    '\r=1',
    '-0.35',
    '−0.35',
    'a,b',
    'a;b',
    '"',
    '',
    ' x',
    "'",
  ),
);
const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 4 });

test.each([',', ';'] as const)(
  'with %j is read back as it was, but for an apostrophe before a formula',
  (separator) => {
    fc.assert(
      fc.property(table, (rows) => {
        const back = read(csvOf(rows, separator), separator);
        expect(back.map((row) => row.length)).toEqual(rows.map((row) => row.length));
        back.flat().forEach((got, i) => {
          const put = rows.flat()[i] ?? '';
          expect([put, `'${put}`]).toContain(got);
          const isFigure = /^-?\d+([.,]\d+)?$/.test(got);
          if (!isFigure) expect('=+-@＝＋－＠\t\r\n'.includes(got[0] ?? ' ')).toBe(false);
        });
      }),
    );
  },
);

it('leaves a figure below zero a figure', () => {
  expect(csvOf([['-0.35', '-12', '-1,5', '-1+1', '−0.35']], ';')).toBe("-0.35;-12;-1,5;'-1+1;−0.35\r\n");
});

it('has no cell within a cell for a spreadsheet that takes the other separator', () => {
  for (const separator of [',', ';'] as const) {
    expect(csvOf([['x;=1+1', 'x,=1+1', 'y']], separator)).toBe(`"x;=1+1"${separator}"x,=1+1"${separator}y\r\n`);
  }
});
