import * as v from 'valibot';
import type { Act, Sense } from '../said.ts';
import { lengthField, numberField, optional, rangeField } from './ask.ts';
import { base, choice, coarse, number, positive, range, several, text } from './fields.ts';
import type { ActPlace, AdjusterKind } from './kind.ts';
import { multiples, onwards, stepFrom, within } from './steps.ts';
import { usualShare } from './usual.ts';

const fields = v.object({
  ...base('threaded-rod'),
  links: v.pipe(several(text({ is: 'body-point-name' }), 5, 'links'), v.readonly()),
  lead: positive(20, 'mm a turn'),
  stepTurns: positive(10, 'turns'),
  range: range(60, 'turns'),
  /** Turns of thread that hold at `reference`, and the fewest that the maker allows: longer turns take them out. */
  engaged: v.optional(positive(100, 'turns')),
  leastEngaged: v.optional(positive(100, 'turns')),
  /** Its length at `reference`, mm, between the same two marks on both sides. */
  length: v.optional(positive(5000, 'mm')),
  /**
   * Most that the left and the right rod may differ in length, mm. Compared are the lengths where both are on file; else
   * what each has gained since its `reference`, as if they were alike there.
   */
  maxSideDifference: v.optional(number(0, 100, 'mm')),
  /** Which way makes it longer, looking at the end that `seenFrom` names. */
  longerWhen: v.optional(choice(['clockwise', 'anticlockwise'])),
  seenFrom: v.optional(text({ is: 'seen-from' })),
  reference: number(-60, 60, 'turns'),
});

type ThreadedRod = v.InferOutput<typeof fields>;

const schema = v.pipe(
  fields,
  v.forward(
    coarse(({ stepTurns: step, range }: ThreadedRod) => ({ step, range }), 'turns'),
    ['stepTurns'],
  ),
);

/** Lowest and highest turns: the range, and no longer than the thread may be drawn out. */
function reach({ range: [low, high], reference, engaged, leastEngaged }: ThreadedRod): [number, number] {
  if (engaged === undefined || leastEngaged === undefined) return [low, high];
  return [low, Math.min(high, reference + engaged - leastEngaged)];
}

/** Which way to turn it and where that is seen from; nothing where the hand of the thread is not on file. */
function senseOf({ longerWhen, seenFrom }: ThreadedRod, turns: number): { sense?: Sense; seenFrom?: string } {
  if (!longerWhen) return {};
  const other = longerWhen === 'clockwise' ? 'anticlockwise' : 'clockwise';
  return { sense: turns > 0 ? longerWhen : other, ...(seenFrom && { seenFrom }) };
}

/** What it does to two wheels that hang on it: their total toe, or where both of them point. */
function setBy(both: ActPlace['both']): Pick<Extract<Act, { act: 'turn-rod' }>, 'sets'> {
  const [left, right] = both?.map(({ toe }) => toe) ?? [];
  if (left === undefined || right === undefined) return {};
  const [total, steer] = [left + right, (left - right) / 2];
  if (Math.abs(total) > Math.abs(steer)) return { sets: total > 0 ? 'toe-in' : 'toe-out' };
  return steer === 0 ? {} : { sets: steer > 0 ? 'to-the-right' : 'to-the-left' };
}

/** A rod with a thread, or a left/right-hand sleeve (`lead` = both pitches): its links grow by turns·lead. */
export const threadedRod: AdjusterKind = {
  kind: 'threaded-rod',
  name: 'Threaded rod',
  schema,
  touches: (rod) => ({ links: rod.links }),
  positions: (rod) => multiples(rod.stepTurns, ...reach(rod as ThreadedRod)),
  bothSides: ({ reference, lead, length, maxSideDifference = Number.POSITIVE_INFINITY }, position) => ({
    value: ((position as number) - (reference as number)) * lead,
    most: maxSideDifference,
    ...(length !== undefined && { start: length }),
  }),
  allowed: (rod) => ({ is: 'place', on: 'turns', low: rod.range[0], high: rod.range[1] }),
  accepts: (rod, position) => within(position, rod.range[0], rod.range[1]),
  effect: (rod, position) => ({
    lengthen: Object.fromEntries(rod.links.map((link: string) => [link, (position as number) * rod.lead])),
  }),
  even: () => true,
  job: 'axle',
  act: (given, from, to, { both }) => {
    const rod = given as ThreadedRod;
    const turns = (to as number) - (from as number);
    return { act: 'turn-rod', turns, mm: turns * rod.lead, ...senseOf(rod, turns), ...setBy(both) };
  },
  place: (_, position) => ({ as: 'turns', turns: position as number }),
  step: ({ reference, range: [low, high] }) => {
    const turns = Math.min(1, Math.max(high - (reference as number), (reference as number) - low));
    return { ...stepFrom(reference as number, turns, high), said: { step: 'longer', turns } };
  },
  fields: [
    { name: 'links', label: 'Lengthens which rod', ask: { as: 'links' } },
    lengthField('lead', 'Longer by, each turn', 'a left/right-hand sleeve: both pitches together'),
    {
      name: 'stepTurns',
      label: 'Set to the nearest',
      ask: {
        as: 'choice',
        choices: [
          [1 / 12, 'half flat'],
          [1 / 6, 'flat'],
          [0.25, 'quarter turn'],
          [0.5, 'half turn'],
        ],
      },
    },
    rangeField('Turns allowed', 'turns'),
    numberField('reference', 'Turns when the dimensions were taken', 'turns'),
    optional({
      name: 'longerWhen',
      label: 'Longer when turned',
      ask: {
        as: 'choice',
        choices: [
          ['clockwise', 'clockwise'],
          ['anticlockwise', 'anticlockwise'],
        ],
      },
    }),
    optional({
      name: 'seenFrom',
      label: 'Seen from',
      hint: 'the wheel end, the sleeve’s outer end',
      ask: { as: 'text' },
    }),
    optional(
      lengthField(
        'length',
        'Length when the dimensions were taken',
        'by tape between two marks, the same on both sides; are left and right not alike, let the right side differ',
      ),
    ),
    optional(
      lengthField(
        'maxSideDifference',
        'Most that left and right may differ',
        'lengths are compared where both are typed; else turns since the dimensions were taken, as if alike then',
      ),
    ),
    optional(numberField('engaged', 'Thread that holds now', 'turns')),
    optional(numberField('leastEngaged', 'Least that the maker allows', 'turns')),
  ],
  start: { stepTurns: 1 / 12, range: [-6, 6], reference: 0 },
  sample: { adjuster: { reference: 0, lead: 1.5, stepTurns: 1 / 12, range: [-6, 6] }, from: 0, to: 1.25 },
  extension: {
    unit: 'turns',
    takes: ['shorter-rod', 'longer-rod'],
    beyond: (rod, end) => onwards(threadedRod.positions(rod), end, Math.max(rod.stepTurns, 0.25), 6),
  },
  tolerance: { usual: 0.05, unit: 'turns' },
  unsure: usualShare('pitch', (rod, by) => ({ ...rod, lead: rod.lead * by }), 0.1),
  // A lead below 0 is in no file; here it is a thread of the other hand.
  reversed: (rod) => ({ ...rod, lead: -rod.lead }),
  live: true,
  effort: 4,
};
