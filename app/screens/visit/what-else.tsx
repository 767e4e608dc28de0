/** What else the plan changes, folded away: bump steer, camber gain, SAI, the offsets at the ground, toe-out on turns. */
import type { Car, Plan } from '../../../core/contract.ts';
import type { WhatElse } from '../../../core/plan/what-else.ts';
import type { SideEffects } from '../../../core/pose/side-effects.ts';
import { aboutLength, wheelAngle } from '../../../core/units/shop.ts';
import { engine } from '../../engine/index.ts';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { useAsked } from '../../state/asking.ts';
import { units } from '../../state/preferences.ts';

interface Row {
  readonly name: string;
  /** mm of travel at which it is taken, + up. */
  readonly at?: number;
  readonly of: (effects: SideEffects) => number | undefined;
  readonly as: 'angle' | 'length';
  /** A gain has its sign. */
  readonly gain?: boolean;
}

const ROWS: readonly Row[] = [
  { name: 'Bump steer at', at: 25, of: ({ bumpSteer }) => bumpSteer?.[0], as: 'angle', gain: true },
  { name: 'Bump steer at', at: -25, of: ({ bumpSteer }) => bumpSteer?.[1], as: 'angle', gain: true },
  { name: 'Camber gain at', at: 25, of: ({ camberGain }) => camberGain?.[0], as: 'angle', gain: true },
  { name: 'Camber gain at', at: -25, of: ({ camberGain }) => camberGain?.[1], as: 'angle', gain: true },
  { name: 'SAI', of: ({ sai }) => sai, as: 'angle' },
  { name: 'Scrub radius', of: ({ scrubRadius }) => scrubRadius, as: 'length' },
  { name: 'Caster trail', of: ({ casterTrail }) => casterTrail, as: 'length' },
  { name: 'Toe-out on turns, 20°', of: ({ toeOutOnTurns }) => toeOutOnTurns, as: 'angle' },
];

const nameOf = ({ name, at }: Row): string =>
  at === undefined ? name : `${name} ${at > 0 ? '+' : ''}${aboutLength(at, 0, units.value)}`;

export function WhatElseCard({ car, plan }: { readonly car: Car; readonly plan: Plan }) {
  const { moves, positions } = plan;
  const { value } = useAsked(
    moves.length > 0 ? `what else ${JSON.stringify([car, moves, positions])}` : undefined,
    (signal) => engine.call('whatElse', [car, { moves, positions }], { signal }),
  );
  const known = (value ?? []).filter(({ before, after }) => Object.keys({ ...before, ...after }).length > 0);
  if (known.length === 0) return null;
  return (
    <details class="what-else">
      <summary>What else changes</summary>
      {known.map((one) => (
        <Corner key={one.corner} {...one} />
      ))}
      <p class="soft">
        Bump steer is the toe gained with the wheel {aboutLength(25, 0, units.value)} up or down. All from the geometry
        on file, with links that do not give.
      </p>
    </details>
  );
}

function Corner({ corner, before, after }: WhatElse) {
  const show = (x: number | undefined, { as, gain = false }: Row): string => {
    if (x === undefined) return '–';
    return as === 'angle' ? wheelAngle(x, units.value, gain) : aboutLength(x, 0, units.value);
  };
  return (
    <table class="paper-table">
      <caption>
        <CornerMark corner={corner} />
      </caption>
      <thead>
        <tr>
          <td />
          <th scope="col">Before</th>
          <th scope="col">After</th>
        </tr>
      </thead>
      <tbody>
        {ROWS.filter(({ of }) => of(before) !== undefined || of(after) !== undefined).map((row) => (
          <tr key={nameOf(row)}>
            <th scope="row">{nameOf(row)}</th>
            <td>{show(row.of(before), row)}</td>
            <td>{show(row.of(after), row)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
