/** Lengths that were measured of a layout: each one that its kind has, and points that have them. */
import { number } from '../adjuster/fields.ts';
import type { Axle, Car, Suspension } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { tapeLayouts } from '../suspension/tape/catalogue.ts';
import { lengthsOf, type Measurements, measuredValue, pointsWith } from '../suspension/tape/measure.ts';
import { USUAL_OFFSET } from '../suspension/tape/offset.ts';
import { each } from './gather.ts';
import { check } from './refuse.ts';

const OFFSET = 'wheelOffset';

/** @throws InputError such as `car.front.suspension.measured.upperFrontLength` */
export function validateMeasured(given: Readonly<Record<string, unknown>>, kind: string, field: string): Measurements {
  const table = tapeLayouts[kind]?.dimensions ?? [];
  const known = [
    ...lengthsOf(kind).map(({ name }) => name),
    ...table.flatMap(({ name }) => (name === OFFSET ? [name] : [])),
  ];
  const entries = each(
    Object.entries(given)
      .filter(([, entry]) => entry !== undefined)
      .map(([name, entry]) => () => {
        const one = known.includes(name) ? table.find((dimension) => dimension.name === name) : undefined;
        if (!one) throw new InputError(`${field}.${name}`, entry, { is: 'no-such', what: 'dimension', known });
        const { value, tolerance } = isLoose(entry) ? entry : { value: entry };
        const at = check(number(one.low, one.high, 'mm'), value, `${field}.${name}`);
        if (tolerance === undefined) return [name, isLoose(entry) ? { value: at } : at] as const;
        return [
          name,
          { value: at, tolerance: check(number(0, 200, 'mm'), tolerance, `${field}.${name}.tolerance`) },
        ] as const;
      }),
  );
  return Object.fromEntries(entries);
}

const isLoose = (entry: unknown): entry is { readonly value?: unknown; readonly tolerance?: unknown } =>
  typeof entry === 'object' && entry !== null && !Array.isArray(entry);

/**
 * The car with each layout the nearest that has the lengths that were measured of it; itself where none were.
 * @throws InputError naming a length that none can have beside the others
 */
export function withMeasured(car: Car, field: string): Car {
  const [front, rear] = each(
    (['front', 'rear'] as const).map((end) => () => axleWith(car[end], `${field}.${end}`)),
  ) as [Axle, Axle];
  return front === car.front && rear === car.rear ? car : { ...car, front, rear };
}

function axleWith(axle: Axle, field: string): Axle {
  const suspension = suspensionWith(axle.suspension, `${field}.suspension`);
  const right = axle.rightSuspension && suspensionWith(axle.rightSuspension, `${field}.rightSuspension`);
  if (suspension === axle.suspension && right === axle.rightSuspension) return axle;
  return { ...axle, suspension, ...(right && { rightSuspension: right }) };
}

function suspensionWith(suspension: Suspension, field: string): Suspension {
  const { kind, points, measured } = suspension;
  if (!measured) return suspension;
  const offset = measured[OFFSET] === undefined ? USUAL_OFFSET : measuredValue(measured[OFFSET]);
  const there = pointsWith(points, kind, measured, { field: `${field}.measured`, offset });
  return there === points ? suspension : { ...suspension, points: there };
}
