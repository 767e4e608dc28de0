/**
 * The same choice of positions as a mixed-integer linear problem for HiGHS (compiled to WebAssembly), a general-purpose
 * solver that knows nothing of suspensions. A car of effect tables is linear: angles add up position by position.
 */

import type { Adjuster, Axle, AxleName, Car, Corner, Position, Reading, Spec, Window } from '../../core/contract.ts';
import { axleOf } from '../../core/corners.ts';
import { adjusterPositions, predictReading } from '../../core/index.ts';
import { between, oneOf, type Random } from './random-cars.ts';

const ANGLES = ['camber', 'caster', 'toe'] as const;
type Angle = (typeof ANGLES)[number];
const AXLES = { front: ['LF', 'RF'], rear: ['LR', 'RR'] } as const;

interface Option {
  readonly name: string;
  readonly camber: number;
  readonly caster: number;
  readonly toe: number;
  readonly minutes: number;
}

/** A front axle known by charts alone: two tables that lean, a rod by the step. */
export function chartCar(random: Random, rows = 7, steps = 12): Car {
  const table = (id: string, camber: number, caster: number): Adjuster => ({
    id,
    name: id,
    kind: 'effect-table',
    effort: oneOf(random, [5, 8, 10]),
    reference: String(Math.ceil(rows / 2)),
    positions: Array.from({ length: rows }, (_, i) => {
      const by = i + 1 - Math.ceil(rows / 2);
      const noise = () => between(random, -0.04, 0.04);
      return {
        label: String(i + 1),
        camber: by * camber + noise(),
        caster: by * caster + noise(),
        toe: by * 0.1 + noise(),
      };
    }).map((row, i) => (i + 1 === Math.ceil(rows / 2) ? { label: row.label, camber: 0, caster: 0, toe: 0 } : row)),
  });
  const rod: Adjuster = {
    id: 'rod',
    name: 'rod',
    kind: 'effect-table',
    effort: 4,
    perStep: { camber: 0, caster: 0, toe: between(random, 0.06, 0.12) },
    range: [-steps, steps],
    reference: 0,
  };
  const adjusters = [
    table('first', between(random, 0.15, 0.3), between(random, 0.2, 0.5)),
    table('second', 0.2, -0.3),
    rod,
  ];
  const suspension = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
  return {
    id: 'chart',
    label: 'Chart car',
    wheel: { rimDiameter: 420 },
    front: { suspension, adjusters, steered: true },
    rear: { suspension, adjusters: [], steered: false },
  };
}

/** The same car, linear: what each position of each adjuster does alone, off the left wheel, printed as a chart. */
export function charted(car: Car): Car {
  const chart = (name: AxleName): Axle => {
    const [corner] = AXLES[name];
    const level: Reading = { [corner]: { camber: 0, caster: 0, toe: 0 } };
    const { adjusters, steered } = car[name];
    const printed = adjusters.map(({ id, kind, effort, ...adjuster }): Adjuster => {
      const own = car[name].adjusters.find((one) => one.id === id) as Adjuster;
      const added = (position: Position) => predictReading(car, level, {}, { [corner]: { [id]: position } })[corner];
      const base = { id, name: adjuster.name ?? id, kind: 'effect-table', effort: effort ?? 8 };
      if (kind === 'threaded-rod') {
        const { stepTurns, range } = adjuster;
        const steps = Math.round(range[1] / stepTurns);
        return { ...base, perStep: { ...added(stepTurns) }, range: [-steps, steps], reference: 0 };
      }
      const positions = adjusterPositions(own).map((position) => ({ label: String(position), ...added(position) }));
      return { ...base, positions, reference: String(adjuster.reference) };
    });
    return { suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters: printed, steered };
  };
  return { ...car, front: chart('front'), rear: chart('rear') };
}

/** Angles that each position of each adjuster adds, relative to the reference. */
function options(adjuster: Adjuster, prefix: string): Option[] {
  const angle = (position: string | number, name: Angle): number =>
    adjuster.positions
      ? ((adjuster.positions.find((row: { label: string }) => row.label === position)[name] ?? 0) as number)
      : (position as number) * ((adjuster.perStep[name] ?? 0) as number);
  return adjusterPositions(adjuster).map((position, i) => ({
    name: `${prefix}_${adjuster.id}_${i}`,
    camber: angle(position, 'camber'),
    caster: angle(position, 'caster'),
    toe: angle(position, 'toe'),
    minutes: position === adjuster.reference ? 0 : (adjuster.effort as number),
  }));
}

const sum = (terms: readonly (readonly [number, string])[]): string =>
  terms.map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`).join(' ') || '+ 0 nothing';

/** Corners of the axles that the spec is about. */
const cornersOf = (spec: Spec): Corner[] =>
  (['front', 'rear'] as const).flatMap((axle) => (spec[axle] ? AXLES[axle] : []));
const windowOf = (spec: Spec, corner: Corner, angle: Angle): Window | undefined => {
  const axle = spec[axleOf(corner)];
  return axle?.[corner.startsWith('L') ? 'left' : 'right']?.[angle] ?? axle?.[angle];
};

/** Fewest minutes with everything in its window, one yes/no a position: text in the LP format that HiGHS reads. */
export function leastWorkProblem(car: Car, spec: Spec, reading: Reading): string {
  const corners = cornersOf(spec).map((corner) => ({
    corner,
    groups: car[axleOf(corner)].adjusters.map((adjuster) => options(adjuster, corner)),
  }));
  const all = corners.flatMap(({ groups }) => groups.flat());
  const rows: string[] = corners.flatMap(({ groups }) =>
    groups.map((group) => `${sum(group.map(({ name }) => [1, name]))} = 1`),
  );
  type Wheels = readonly (readonly [factor: number, corner: Corner])[];
  const within = (angle: Angle, wheels: Wheels, window: Window | undefined): void => {
    if (!window) return;
    const now = wheels.reduce(
      (total, [factor, corner]) => total + factor * (reading[corner]?.[angle] ?? Number.NaN),
      0,
    );
    const terms = [...wheels, ...(angle === 'toe' ? thrust(wheels) : [])].flatMap(([factor, corner]) =>
      (corners.find((one) => one.corner === corner)?.groups.flat() ?? [])
        .filter((option) => option[angle] !== 0)
        .map((option) => [factor * option[angle], option.name] as const),
    );
    rows.push(`${sum(terms)} >= ${window.low - now}`, `${sum(terms)} <= ${window.high - now}`);
  };
  /** Front toe against the thrust line: what the rear wheels turn it by falls on the left and rises on the right. */
  const thrust = (wheels: Wheels): Wheels => {
    if (reading.toeReference !== 'thrust-line') return [];
    const share = wheels.reduce((total, [f, corner]) => total + (corner === 'LF' ? -f : corner === 'RF' ? f : 0), 0);
    if (share === 0) return [];
    return [
      [share / 2, 'LR'],
      [-share / 2, 'RR'],
    ];
  };
  for (const angle of ANGLES) {
    for (const { corner } of corners) within(angle, [[1, corner]], windowOf(spec, corner, angle));
  }
  for (const axle of ['front', 'rear'] as const) {
    const [left, right] = AXLES[axle];
    const both = (angle: Angle, a: number, b: number, window: Window | undefined): void =>
      within(
        angle,
        [
          [a, left],
          [b, right],
        ],
        window,
      );
    both('toe', 1, 1, spec[axle]?.totalToe);
    both('toe', 0.5, -0.5, spec[axle]?.thrustAngle);
    both('camber', 1, -1, spec[axle]?.crossCamber);
    both('caster', 1, -1, spec[axle]?.crossCaster);
  }
  const cost = sum(all.filter(({ minutes }) => minutes > 0).map(({ minutes, name }) => [minutes, name]));
  return problem(
    cost,
    rows,
    all.map(({ name }) => name),
  );
}

/** Least Σ((value − aim)/half)² with windows of the wheels alone: one yes/no a combination of a corner's positions. */
export function closestProblem(car: Car, spec: Spec, reading: Reading): string {
  const names: string[] = [];
  const rows: string[] = [];
  const costs: (readonly [number, string])[] = [];
  for (const corner of cornersOf(spec)) {
    let states: Omit<Option, 'minutes'>[] = [{ name: corner, camber: 0, caster: 0, toe: 0 }];
    for (const adjuster of car[axleOf(corner)].adjusters) {
      const more = options(adjuster, '');
      states = states.flatMap((state) =>
        more.map((option, i) => ({
          name: `${state.name}_${i}`,
          camber: state.camber + option.camber,
          caster: state.caster + option.caster,
          toe: state.toe + option.toe,
        })),
      );
    }
    const allowed = states.filter((state) =>
      ANGLES.every((angle) => {
        const window = windowOf(spec, corner, angle);
        const value = (reading[corner]?.[angle] ?? Number.NaN) + state[angle];
        return !window || (value >= window.low - 1e-9 && value <= window.high + 1e-9);
      }),
    );
    for (const state of allowed) {
      const distance = ANGLES.reduce((total, angle) => {
        const window = windowOf(spec, corner, angle);
        if (!window) return total;
        const value = (reading[corner]?.[angle] ?? Number.NaN) + state[angle];
        const aim = window.aim ?? (window.low + window.high) / 2;
        return total + ((value - aim) / ((window.high - window.low) / 2)) ** 2;
      }, 0);
      costs.push([distance, state.name]);
      names.push(state.name);
    }
    rows.push(`${sum(allowed.map(({ name }) => [1, name]))} = 1`);
  }
  return problem(sum(costs), rows, names);
}

function problem(cost: string, rows: readonly string[], binary: readonly string[]): string {
  const wrap = (text: string): string => text.replace(/(.{200}\S*) /g, '$1\n ');
  return [
    'Minimize',
    ` obj: ${wrap(cost)}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${wrap(row)}`),
    'Binary',
    ...binary.map((name) => ` ${name}`),
    'End',
    '',
  ].join('\n');
}
