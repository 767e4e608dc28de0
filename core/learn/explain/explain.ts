/**
 * Why a reading is not as predicted: each plain cause with its probability, by Bayes. How likely the reading is by a cause
 * follows from the same covariance that a plan's chance does: dimensions, moves, gauge. How likely the cause is before is
 * guessed (guesses.ts). One cause at a time: two at once are for the second look.
 */
import type { Angle, BareExplanation, Car, Corner, Gauge, Misfit, Round } from '../../contract.ts';
import { axleOf, isLeft } from '../../corners.ts';
import { ANGLES_A_WHEEL, CAMBER, CASTER } from '../../pose/numbers.ts';
import { DEFAULT_AXLE_GAUGE } from '../../reading/gauge.ts';
import type { Explained } from '../../said.ts';
import { asModelled } from '../sittings.ts';
import { type Compared, comparedAll } from './compared.ts';
import { GUESSES } from './guesses.ts';
import { storiesOfFigures } from './of-figures.ts';
import { reversible, storiesOfMoves } from './of-moves.ts';
import type { Story } from './story.ts';

/** What is less likely is not worth a word. */
const WORTH_TELLING = 0.005;

/** @param car, before, round validated; @param before the reading that the round's is held against */
export function explained(car: Car, before: Round, round: Round, gauge: Gauge): readonly BareExplanation[] {
  const full = { ...DEFAULT_AXLE_GAUGE, ...gauge };
  const [first, second] = [asModelled(before, car), asModelled(round, car)];
  const all = comparedAll(car, first, second, full, before.reading);
  const plain = new Map(all.map((one) => [one, one.likelihood()]));
  const stories = [
    { said: { cause: 'noise' }, weight: 1, told: new Map() } as Story,
    ...storiesOfMoves(all),
    ...reversible(all).map((one) =>
      ofReversed((built) => comparedAll(built, first, second, full, before.reading), car, all, one),
    ),
    ...storiesOfFigures(all, { before: before.reading, after: round.reading }),
  ];
  const logs = stories.map((story) => Math.log(GUESSES[story.said.cause] * story.weight) + gainOf(story, plain));
  const most = Math.max(...logs);
  const shares = logs.map((log) => Math.exp(log - most));
  const total = shares.reduce((sum, x) => sum + x, 0);
  return together(
    stories,
    shares.map((x) => x / total),
  )
    .filter(({ probability }, i) => i === 0 || probability >= WORTH_TELLING)
    .map(({ story, probability }) => ({
      ...story.said,
      probability,
      left: all.flatMap((one) => misfits(story.instead?.get(one) ?? one, story.told.get(one))),
      ...(story.correction && { correction: story.correction }),
    }));
}

/** ln of how much likelier the reading is by a story than by the records. */
function gainOf({ told, instead }: Story, plain: ReadonlyMap<Compared, number>): number {
  const touched = new Set([...told.keys(), ...(instead?.keys() ?? [])]);
  let gain = 0;
  for (const one of touched) {
    const before = plain.get(one)!;
    const after = (instead?.get(one) ?? one).likelihood(told.get(one));
    // Where even the records have no pose nothing can be said of that corner.
    if (before > Number.NEGATIVE_INFINITY) gain += after - before;
    else return Number.NEGATIVE_INFINITY;
  }
  return gain;
}

function ofReversed(
  compared: (built: Car) => readonly Compared[],
  car: Car,
  all: readonly Compared[],
  { corner, reversed, said }: ReturnType<typeof reversible>[number],
): Story {
  const axle = car[axleOf(corner)];
  const swap = (list: typeof axle.adjusters) => list.map((one) => (one.id === reversed.id ? reversed : one));
  const right = axle.rightAdjusters ?? axle.adjusters;
  const built = isLeft(corner)
    ? { ...axle, adjusters: swap(axle.adjusters), rightAdjusters: right }
    : { ...axle, rightAdjusters: swap(right) };
  const others = compared({ ...car, [axleOf(corner)]: built });
  const at = all.findIndex(({ assembly }) => assembly.corners.includes(corner));
  return {
    said,
    weight: 1,
    told: new Map(),
    instead: new Map([[all[at]!, others[at]!]]),
    correction: { of: 'build', corner, adjuster: reversed },
  };
}

/** Stories of one cause and one place as one, told by the likeliest of them; most likely first. */
function together(stories: readonly Story[], shares: readonly number[]) {
  const groups = new Map<string, { story: Story; best: number; probability: number }>();
  stories.forEach((story, i) => {
    const key = keyOf(story.said);
    const share = shares[i]!;
    const known = groups.get(key);
    if (!known) groups.set(key, { story, best: share, probability: share });
    else {
      known.probability += share;
      if (share > known.best) [known.story, known.best] = [story, share];
    }
  });
  return [...groups.values()].sort((a, b) => b.probability - a.probability);
}

const keyOf = ({ cause, corner, adjuster, angle, reading }: Explained): string =>
  [cause, corner, adjuster?.adjuster, angle, reading].join('/');

function misfits(
  compared: Compared,
  told: Story['told'] extends ReadonlyMap<Compared, infer T> ? T | undefined : never,
) {
  const off = compared.off(told);
  if (!off) return [];
  const { corners } = compared.assembly;
  const size = off.numbers.length;
  return off.numbers.flatMap((number, i): Misfit[] => {
    const corner: Corner | undefined = corners[Math.floor(number / ANGLES_A_WHEEL)];
    if (!corner) return [];
    const place = number % ANGLES_A_WHEEL;
    const angle: Angle = place === CAMBER ? 'camber' : place === CASTER ? 'caster' : 'toe';
    return [{ corner, angle, by: off.by[i]!, sigmas: off.by[i]! / Math.sqrt(off.covariance[i * (size + 1)]!) }];
  });
}
