/** What a person must know beside a plan's figures. */
import { adjusterName } from '../../adjuster/names.ts';
import { adjustersOf } from '../../adjuster/of-corner.ts';
import {
  type AxleChange,
  type BareMove,
  type CarSettings,
  CORNERS,
  type Corner,
  type PlanRequest,
} from '../../contract.ts';
import { axleOf } from '../../corners.ts';
import { type Assembly, type CarModel, cornerOf } from '../../pose/car-model.ts';
import { sideEffectsOf, TRAVEL } from '../../pose/side-effects.ts';
import type { Note } from '../../said.ts';
import { predictWith } from '../predict.ts';
import { adjusterOf, kindOfAdjuster, nameOf, type Positions, type Problem } from '../problem.ts';
import { isKnownApart, mostApart, tiesOf } from '../terms.ts';
import { wheelNotes } from './wheel-notes.ts';

export function notesOf(problem: Problem, moves: readonly BareMove[], then: Positions): Note[] {
  const { request, model, now } = problem;
  const moved = CORNERS.filter((corner) => moves.some((move) => move.corner === corner));
  const strains = model
    .filter(({ corners }) => corners.length > 1 && corners.some((corner) => moved.includes(corner)))
    .flatMap((axle) => strainNote(axle, now, then));
  return [
    ...chartNote(request, moves),
    ...lengthNotes(request, moves),
    ...moved.flatMap((corner) => bumpSteerNote(model, corner, now, then)),
    ...strains,
    ...thinPacks(request, then),
    ...axleNotes(problem, moved, then),
    ...wheelNotes(problem, then),
  ];
}

function chartNote(request: PlanRequest, moves: readonly BareMove[]): Note[] {
  const byChart = moves.filter((move) => kindOfAdjuster(adjusterOf(request, move)).byChart);
  const names = [...new Set(byChart.map((move) => nameOf(request, move)))];
  return names.length > 0 ? [{ note: 'by-chart', names }] : [];
}

/** Limits between left and right that lengths on file could not be held against. */
function lengthNotes({ car }: PlanRequest, moves: readonly BareMove[]): Note[] {
  return (['front', 'rear'] as const).flatMap((axle) =>
    tiesOf(car[axle])
      .filter((tie) => !isKnownApart(tie))
      .filter(([{ id }]) => moves.some((move) => axleOf(move.corner) === axle && move.adjuster === id))
      .map((tie): Note => ({ note: 'lengths-unknown', axle, name: adjusterName(tie[0]), most: mostApart(tie) })),
  );
}

function thinPacks(request: PlanRequest, then: Positions): Note[] {
  return CORNERS.flatMap((corner) =>
    adjustersOf(request.car, corner).flatMap((adjuster): Note[] => {
      const { min } = kindOfAdjuster(adjuster).stack?.(adjuster) ?? {};
      const holds = then[corner][adjuster.id];
      if (min === undefined || Number(holds) >= min - 1e-6) return [];
      const pack = { corner, adjuster: adjuster.id, name: adjusterName(adjuster) };
      return [{ note: 'below-least', pack, holds: Number(holds), least: min }];
    }),
  );
}

/** Degrees over 25 mm that bump steer may grow by before it is spoken of: trade practice, no source. */
const CLEARLY_WORSE = 0.1;

function bumpSteerNote(model: CarModel, corner: Corner, now: Positions, then: Positions): Note[] {
  const most = (at: Positions): number =>
    Math.max(...(sideEffectsOf(cornerOf(model, corner, at), at[corner]).bumpSteer ?? [0]).map(Math.abs));
  const before = most(now);
  const after = most(then);
  if (after - before < CLEARLY_WORSE) return [];
  return [{ note: 'bump-steer', corner, before, after, travel: TRAVEL }];
}

/** mm that links on bushes may be stretched more than before without a word: trade practice, no source. */
const CLEARLY_STRAINED = 1;

function strainNote({ corners, model }: Assembly, now: CarSettings, then: CarSettings): Note[] {
  const strain = (at: CarSettings): number => {
    const pose = model.pose(corners.map((corner) => at[corner] ?? {}));
    return pose.reachable ? (pose.corners[0]?.verdict.residual ?? 0) : 0;
  };
  const [before, after] = [strain(now), strain(then)];
  if (after - before < CLEARLY_STRAINED) return [];
  return [{ note: 'strain', corners, before, after }];
}

/** Of each axle on links that is worked on, where how far it may go has windows. */
function axleNotes(problem: Problem, moved: readonly Corner[], then: Positions): Note[] {
  const { request, model, now, terms } = problem;
  const after = predictWith(model, request.reading, now, then);
  return (['front', 'rear'] as const).flatMap((axle): Note[] => {
    const { pinionChange: pinion = 0, lateralChange: aside = 0 } = after[axle] ?? {};
    const windowOf = (change: AxleChange) => terms.find((one) => one.where === axle && one.angle === change)?.window;
    const [ofPinion, ofAside] = [windowOf('pinionChange'), windowOf('lateralChange')];
    if (!(ofPinion || ofAside) || !moved.some((corner) => axleOf(corner) === axle)) return [];
    const kept = {
      ...(ofPinion?.assumed && { pinion: ofPinion.high }),
      ...(ofAside?.assumed && { aside: ofAside.high }),
    };
    const beyond = Math.abs(pinion) > (kept.pinion ?? Infinity) || Math.abs(aside) > (kept.aside ?? Infinity);
    return [
      {
        ...{ note: 'axle-goes', axle, pinion, aside },
        ...(Object.keys(kept).length > 0 && { kept }),
        ...(beyond && { beyond }),
      },
    ];
  });
}
