/** What is wanted beyond the windows that were typed: a rigid axle on links that stays where it was. */
import type { AxleSpec, Car, PlanRequest, PlanStyle, Reading, Spec, Window } from '../contract.ts';
import { AXLES } from '../corners.ts';
import { isOnLinks } from './terms.ts';

/** Degrees that a pinion may nod before its joints wear or hum, either way. Trade practice, no source. */
const PINION: Window = { low: -0.5, aim: 0, high: 0.5, assumed: true };
/** mm that an axle may go sideways before a tyre is nearer to the arch, either way. Trade practice, no source. */
const LATERAL: Window = { low: -3, aim: 0, high: 3, assumed: true };

/**
 * A thrust line can be set by any of the links, and the planner would take those that come nearest by a hair's breadth,
 * whatever they do to the pinion: an axle on links that was read gets the windows of change that its spec does not give,
 * marked as nobody's (`assumed`).
 */
export function withAxleKept(spec: Spec, car: Car, reading: Reading): Spec {
  const kept = (['front', 'rear'] as const).flatMap((name): [string, AxleSpec][] => {
    if (!isOnLinks(car[name]) || !AXLES[name].some((corner) => reading[corner])) return [];
    return [[name, { pinionChange: PINION, lateralChange: LATERAL, ...spec[name] }]];
  });
  return kept.length > 0 ? { ...spec, ...Object.fromEntries(kept) } : spec;
}

/** Styles that keep to the windows that they are given and to nothing else. */
const AS_GIVEN: ReadonlySet<string> = new Set<PlanStyle>(['closest', 'least-work', 'surest']);

/** The windows that a request's style goes by. */
export const specFor = ({ spec, style = 'closest', car, reading }: PlanRequest): Spec =>
  AS_GIVEN.has(style) ? spec : withAxleKept(spec, car, reading);
