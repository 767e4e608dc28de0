/** What came of the cycles, in words and in a table by situation. */
import { type Cycle, isFault } from './cycles.ts';

const COLUMNS: readonly (readonly [string, (of: readonly Cycle[]) => number])[] = [
  ['kills', (of) => of.length],
  ['at the log', (of) => of.filter(({ kill }) => kill === 'at the log').length],
  ['called saved', (of) => of.reduce((sum, { claims }) => sum + claims, 0)],
  ['lost unsaid', (of) => of.filter(({ lost, said }) => lost.length > 0 && !said).length],
  ['lost, said', (of) => of.filter(({ lost, said }) => lost.length > 0 && said).length],
  ['half', (of) => of.filter(({ half, part, cutOff }) => half.length > 0 || (part && !cutOff)).length],
  ['cut off, said', (of) => of.filter(({ cutOff }) => cutOff).length],
  ['said, none lost', (of) => of.filter(({ lost, said }) => said && lost.length === 0).length],
  ['same screen', (of) => of.filter(({ screen }) => screen === 'the same').length],
  ['further on', (of) => of.filter(({ screen }) => screen === 'further on').length],
  ['another', (of) => of.filter(({ screen }) => screen === 'another').length],
];

export function tableOf(cycles: readonly Cycle[]): string {
  const names = [...new Set(cycles.map(({ situation }) => situation))].sort();
  const rows = [
    ...names.map((name) => [name, cycles.filter(({ situation }) => situation === name)] as const),
    ['all', cycles] as const,
  ];
  const width = (title: string) => Math.max(title.length, 4) + 2;
  const head = `${''.padEnd(26)}${COLUMNS.map(([title]) => title.padStart(width(title))).join('')}`;
  const lines = rows.map(
    ([name, of]) =>
      `${name.padEnd(26)}${COLUMNS.map(([title, count]) => `${count(of)}`.padStart(width(title))).join('')}`,
  );
  return [head, ...lines].join('\n');
}

/** What was not as it should be, or was said to be so. */
export function wordsOf(cycle: Cycle): string {
  const { situation, kill, lost, said, half, part, cutOff, screens } = cycle;
  const list = (what: string, of: readonly string[]) =>
    of.length > 0 ? [`${what}: ${of.slice(0, 5).join('; ')}${of.length > 5 ? ` and ${of.length - 5} more` : ''}`] : [];
  return [
    `${isFault(cycle) ? 'FAULT' : 'said'} in ${situation}, killed ${kill}`,
    ...list('lost', lost),
    ...list('half', half),
    ...(part ? [`there of it: ${part}`] : []),
    ...(said || cutOff ? [`said: ${said} ${cutOff ?? ''}`] : []),
    ...(screens ? [`screens: ${screens}`] : []),
  ].join('\n    ');
}
