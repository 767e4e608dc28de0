import { sidesOf } from '../adjuster/of-corner.ts';
import { type Angle, type AxleName, type Car, type CarFile, CORNERS, type Reading, type Spec } from '../contract.ts';
import { axleOf, isLeft } from '../corners.ts';
import { InputError } from '../input-error.ts';
import { type Worth, worthOf } from '../plan/worth.ts';
import { specTerms } from '../reading/spec-terms.ts';
import { validateCarFile } from '../records/car-file.ts';
import { type PlanRequestOptions, planRequest } from './plan-request.ts';

/**
 * Of each axle that is known as a usual layout and has windows: how likely, 0…1, it comes in by its plan, and how likely it
 * would with each length that nobody has measured known to a tape's tolerance. It is that of the plan of the last reading; of a car without
 * one, of a reading that is off as cars are that come to be set.
 * @param file a car file with windows
 * @param options what is asked beside what it says, as in a request
 * @throws InputError naming the field, the value and what is allowed
 */
export function dimensionWorth(
  file: CarFile,
  options: PlanRequestOptions = {},
): Readonly<Partial<Record<AxleName, Worth>>> {
  const checked = validateCarFile(file);
  const { car, spec, visits = [] } = checked;
  if (!spec) throw new InputError('spec', spec, { is: 'windows' });
  const isRead = visits.some(({ rounds }) => rounds.length > 0);
  const asked = isRead
    ? checked
    : {
        ...checked,
        visits: [{ ...FIRST, carId: car.id, rounds: [{ reading: usualReading(car, spec), settings: {} }] }],
      };
  return worthOf(planRequest(asked, options));
}
const FIRST = { id: 'first', opened: '2026-01-01T00:00:00Z' };

/** Half windows that the angles of a car that comes to be set are off, left and right; trade practice, no source. */
const OFF: Readonly<Partial<Record<Angle, readonly [left: number, right: number]>>> = {
  camber: [-2, 1.6],
  caster: [-1.6, 1.4],
  toe: [2.2, -1.6],
};

/** Every wheel as its suspension has it, and where it has a window so far off its aim. */
function usualReading(car: Car, spec: Spec): Reading {
  const terms = specTerms(spec);
  return Object.fromEntries(
    CORNERS.map((corner) => {
      const side = isLeft(corner) ? 0 : 1;
      const { camber, toe } = sidesOf(car[axleOf(corner)])[side].suspension;
      const own = terms
        .filter(({ where }) => where === corner)
        .map(({ angle, window: { aim, half } }) => [angle, aim + (OFF[angle as Angle]?.[side] ?? 0) * half] as const);
      return [corner, { camber, toe, ...Object.fromEntries(own) }];
    }),
  );
}
