/** What a person must know beside a plan's figures, a sentence each. */
import { type CarSettings, CORNERS, type Corner, type Move } from '../../contract.ts';
import { type Assembly, type CarModel, cornerOf } from '../../pose/car-model.ts';
import { sideEffectsOf, TRAVEL } from '../../pose/side-effects.ts';
import { adjusterOf, kindOfAdjuster, type Positions, type Problem } from '../problem.ts';

export function notesOf({ request, model, now }: Problem, moves: readonly Move[], then: Positions): string[] {
  const byChart = moves.filter((move) => kindOfAdjuster(adjusterOf(request, move)).byChart);
  const names = [...new Set(byChart.map((move) => adjusterOf(request, move).name ?? move.adjuster))];
  const chart =
    names.length > 0
      ? [
          `${names.join(', ')}: the effect is the chart's; what it does to other angles is not known. Re-measure them all.`,
        ]
      : [];
  const moved = CORNERS.filter((corner) => moves.some((move) => move.corner === corner));
  const strains = model
    .filter(({ corners }) => corners.length > 1 && corners.some((corner) => moved.includes(corner)))
    .flatMap((axle) => strainNote(axle, now, then));
  return [...chart, ...moved.flatMap((corner) => bumpSteerNote(model, corner, now, then)), ...strains];
}

/** Degrees over 25 mm that bump steer may grow by before it is spoken of: trade practice, no source. */
const CLEARLY_WORSE = 0.1;

function bumpSteerNote(model: CarModel, corner: Corner, now: Positions, then: Positions): string[] {
  const most = (at: Positions): number =>
    Math.max(...(sideEffectsOf(cornerOf(model, corner, at), at[corner]).bumpSteer ?? [0]).map(Math.abs));
  const before = most(now);
  const after = most(then);
  if (after - before < CLEARLY_WORSE) return [];
  return [
    `${corner}: bump steer gets worse, from ${before.toFixed(2)}° to ${after.toFixed(2)}° of toe over ${TRAVEL} mm of travel.`,
  ];
}

/** mm that links on bushes may be stretched more than before without a word: trade practice, no source. */
const CLEARLY_STRAINED = 1;

function strainNote({ corners, model }: Assembly, now: CarSettings, then: CarSettings): string[] {
  const strain = (at: CarSettings): number => {
    const pose = model.pose(corners.map((corner) => at[corner] ?? {}));
    return pose.reachable ? (pose.corners[0]?.verdict.residual ?? 0) : 0;
  };
  const [before, after] = [strain(now), strain(then)];
  if (after - before < CLEARLY_STRAINED) return [];
  return [
    `${corners.join(' and ')}: the links no longer agree; their bushes take up ${after.toFixed(1)} mm (before: ${before.toFixed(1)} mm).`,
  ];
}
