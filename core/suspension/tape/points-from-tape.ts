import { InputError } from '../../input-error.ts';
import { suspensionKinds } from '../catalogue.ts';
import { tapeLayouts } from './catalogue.ts';
import { suspensionFromTape, type TapedSuspension } from './tape.ts';

/**
 * Points, camber and toe of a suspension from dimensions that a tape can take, mm and degrees, signs as in the
 * contract; what is left out is taken from the kind's table and named in `assumed`.
 * @param tape dimensions by name, `tie` (ahead or behind) and `kind` (default `double-wishbone`)
 * @throws InputError naming the dimension that is missing, unknown, out of its limits, or with which a triangle cannot
 * close, and what it may be
 */
export function pointsFromTape(tape: Readonly<Record<string, unknown>>, field = 'tape'): TapedSuspension {
  if (typeof tape !== 'object' || tape === null || Array.isArray(tape)) {
    throw new InputError(field, tape, { is: 'object', fields: ['kind'], open: true, in: 'mm' });
  }
  const { kind = 'double-wishbone' } = tape;
  const layout = Object.values(tapeLayouts).find((one) => one.kind === kind);
  if (!layout) {
    const of = Object.keys(tapeLayouts);
    const names = of.map((one) => suspensionKinds[one]?.name ?? one);
    throw new InputError(`${field}.kind`, kind, { is: 'one-of', of, names });
  }
  return suspensionFromTape(layout, tape, field);
}
