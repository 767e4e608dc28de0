/** How well what is read of an assembly repeats: the shop's gauge, or what an angle was measured with in its place. */
import type { Corner, Gauge, Methods } from '../../contract.ts';
import { axleOf } from '../../corners.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { CAMBER, CASTER, hasBody, LATERAL, numbersOf, PITCH, TOE } from '../../pose/numbers.ts';
import { placeAmong } from '../states/state-space.ts';

/** One standard deviation of each of its numbers. */
export function sigmasOf({ corners, sides }: Assembly, gauge: Required<Gauge>, methods: Methods = {}): Float64Array {
  const sigmas = new Float64Array(numbersOf(sides));
  const put = (corner: Corner, angle: number, sigma: number): void => {
    sigmas[placeAmong(corners, corner, angle)] = sigma;
  };
  for (const corner of corners) {
    const own = methods[corner];
    put(corner, CAMBER, own?.camber?.sd ?? gauge.camber);
    put(corner, CASTER, own?.caster?.sd ?? gauge.caster);
    put(corner, TOE, own?.toe?.sd ?? gauge.toe);
  }
  if (hasBody(sides)) {
    const own = methods[axleOf(corners[0]!)];
    put(corners[0]!, PITCH, own?.pinionAngle?.sd ?? gauge.pinionAngle);
    put(corners[0]!, LATERAL, own?.lateral?.sd ?? gauge.lateral);
  }
  return sigmas;
}
