/**
 * The last rows of `npm run bench:rounds`: simulated cars, blind and set by the rack, planned as entered and with what their own readings have taught, with a tape and from a typical layout.
 */
import { type Batch, playAll } from './crew.ts';
import { LEARNERS } from './families.ts';
import { MEASURES, type PlayedWays, WAYS, type Way } from './play-learning.ts';

const OFFS = [
  [5, 'with a tape, points ±5 mm'],
  [30, 'without a tape: the typical layout, points off by up to ±30 mm'],
] as const;
/** Cars that a core takes at a time. */
const AT_A_TIME = 4;

const percent = (part: number, all: number): string => (all === 0 ? '–' : `${((100 * part) / all).toFixed(1)} %`);

/** @param only of rows whose name holds it */
export async function learningRows(cars: number, only: string): Promise<void> {
  const groups = OFFS.flatMap(([off, title]) =>
    LEARNERS.map(({ name }, family) => ({ off, title, name, family })),
  ).filter(({ name, title }) => `${name}, ${title}`.includes(only));
  const batches = groups.map(({ off, family }) =>
    Array.from({ length: Math.ceil(cars / AT_A_TIME) }, (_, i): Batch => {
      const from = i * AT_A_TIME;
      return { half: 0, family, from, to: Math.min(cars, from + AT_A_TIME), off };
    }),
  );
  const played = playAll<PlayedWays>(batches.flat());
  console.log('\nWith what readings teach; windows camber ±0.25°, caster ±0.4°, toe ±0.08°, all of them met at');
  console.log(
    `  ${''.padEnd(16)}${Array.from({ length: MEASURES }, (_, n) => `re-measure ${n + 1}`.padEnd(16)).join('')}plans of 85–95 % that came true`,
  );
  for (const [g, { title, name }] of groups.entries()) {
    const outcomes = (await Promise.all(played.splice(0, batches[g]!.length)))
      .flat()
      .filter((one) => one !== undefined);
    console.log(`\n${name}, ${title}: ${outcomes.length} cars`);
    for (const way of WAYS) {
      row(
        way,
        outcomes.map((one) => one[way]),
      );
    }
  }
}

function row(name: string, ways: readonly Way[]): void {
  const cells = Array.from({ length: MEASURES }, (_, n) =>
    percent(ways.filter((way) => way.in[n]).length, ways.length),
  );
  const sure = ways.flatMap(({ plans }) => plans).filter(({ chance }) => chance >= 0.85 && chance <= 0.95);
  const came = sure.filter((plan) => plan.came).length;
  console.log(
    `  ${name.padEnd(16)}${cells.map((cell) => cell.padEnd(16)).join('')}${percent(came, sure.length)} of ${sure.length}`,
  );
}
