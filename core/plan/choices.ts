/** The plans that are worth a choice. */
import { jobCount } from '../adjuster/job.ts';
import type { PlanRequest, PlanStyle } from '../contract.ts';
import { Choices } from './choose.ts';
import { evaluate, movedTo, type Positions, problemOf, workOf } from './problem.ts';

/** One of several plans that are worth a choice. */
export interface PlanChoice {
  /** Asks for it again: fields of a request. */
  readonly ask: Pick<PlanRequest, 'style' | 'maxEffort'>;
  /** The styles whose plan it is; none for one between the closest and the least work. */
  readonly styles: readonly PlanStyle[];
  readonly moves: number;
  /** What those are where moves that are done in one go count once. */
  readonly jobs: number;
  /** Minutes. */
  readonly effort: number;
  readonly inWindow: boolean;
  /** As a plan has it. */
  readonly distance: number;
  /** How far from their aims the angles are, root mean square: 0 on the aim, 1 at the edges of the windows. */
  readonly offAim: number;
  /** 0…1, as a plan has it. */
  readonly chance: number;
}

/** How many plans a person chooses among, beside the practical and the surest. */
const FEW = 5;

/** The plans of a validated request that are worth choosing among. */
export function choicesOf(request: PlanRequest): PlanChoice[] {
  const problem = problemOf(request);
  const choices = new Choices(problem);
  const front = choices.tradeOff();
  const last = Math.max(0, front.length - 1);
  const spread = Array.from({ length: FEW }, (_, i) => Math.round((i * last) / (FEW - 1)));
  const found = new Map<string, { ask: PlanChoice['ask']; positions: Positions; styles: PlanStyle[] }>();
  const add = (positions: Positions, ask: PlanChoice['ask'], ...styles: PlanStyle[]): void => {
    const key = JSON.stringify(positions);
    const known = found.get(key) ?? { ask, positions, styles: [] };
    known.styles.push(...styles);
    found.set(key, known);
  };
  add(choices.best('practical'), { style: 'practical' }, 'practical');
  add(choices.best('surest'), { style: 'surest' }, 'surest');
  if (front.length === 0) add(choices.best('closest'), { style: 'closest' }, 'closest');
  for (const place of front.length === 0 ? [] : new Set(spread)) {
    const { effort, positions } = front[place]!;
    const styles: PlanStyle[] = [
      ...(place === 0 ? (['closest'] as const) : []),
      ...(place === last ? (['least-work'] as const) : []),
    ];
    const [style] = styles;
    add(positions, style ? { style } : { style: 'closest', maxEffort: effort }, ...styles);
  }
  return [...found.values()].map(({ positions, ...rest }) => {
    const { inWindow, distance, chance } = evaluate(problem, positions);
    const offAim = Math.sqrt(distance / Math.max(1, problem.terms.length));
    const moved = movedTo(problem, positions);
    const jobs = jobCount(
      request.car,
      moved.map(({ corner, adjuster }) => ({ corner, adjuster: adjuster.id })),
    );
    return {
      ...rest,
      moves: moved.length,
      jobs,
      effort: workOf(problem, positions),
      inWindow,
      distance,
      offAim,
      chance,
    };
  });
}
