/** What else the plan changes, folded away: bump steer, camber gain, SAI, the offsets at the ground, toe-out on turns. */
import type { Car, Plan } from '../../../core/contract.ts';
import type { WhatElse } from '../../../core/plan/what-else.ts';
import type { SideEffects } from '../../../core/pose/side-effects.ts';
import { formatAngle } from '../../../core/units/format.ts';
import { engine } from '../../engine/index.ts';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { useAsked } from '../../state/asking.ts';
import { units } from '../../state/preferences.ts';

interface Row {
  readonly name: string;
  readonly of: (effects: SideEffects) => number | undefined;
  readonly unit: '°' | ' mm';
}

const ROWS: readonly Row[] = [
  { name: 'Toe, 25 mm up', of: ({ bumpSteer }) => bumpSteer?.[0], unit: '°' },
  { name: 'Toe, 25 mm down', of: ({ bumpSteer }) => bumpSteer?.[1], unit: '°' },
  { name: 'Camber, 25 mm up', of: ({ camberGain }) => camberGain?.[0], unit: '°' },
  { name: 'SAI', of: ({ sai }) => sai, unit: '°' },
  { name: 'Scrub radius', of: ({ scrubRadius }) => scrubRadius, unit: ' mm' },
  { name: 'Caster trail', of: ({ casterTrail }) => casterTrail, unit: ' mm' },
  { name: 'Toe-out on turns, 20°', of: ({ toeOutOnTurns }) => toeOutOnTurns, unit: '°' },
];

export function WhatElseCard({ car, plan }: { readonly car: Car; readonly plan: Plan }) {
  const { moves, positions } = plan;
  const { value } = useAsked(
    moves.length > 0 ? `what else ${JSON.stringify([car, moves, positions])}` : undefined,
    (signal) => engine.call('whatElse', [car, { moves, positions }], { signal }),
  );
  const known = (value ?? []).filter(({ before }) => Object.keys(before).length > 0);
  if (known.length === 0) return null;
  return (
    <details class="what-else">
      <summary>What else changes</summary>
      {known.map((one) => (
        <Corner key={one.corner} {...one} />
      ))}
      <p class="soft">Worked out from the geometry on file, with links that do not give.</p>
    </details>
  );
}

function Corner({ corner, before, after }: WhatElse) {
  const show = (x: number | undefined, unit: Row['unit']): string => {
    if (x === undefined) return '–';
    return unit === '°'
      ? `${formatAngle(x, { decimal: units.value.decimal })}°`
      : `${Math.round(x)} mm`.replace('-', '−');
  };
  return (
    <table class="paper-table">
      <caption>
        <CornerMark corner={corner} />
      </caption>
      <thead>
        <tr>
          <th scope="col">Gains or has</th>
          <th scope="col">Before</th>
          <th scope="col">After</th>
        </tr>
      </thead>
      <tbody>
        {ROWS.filter(({ of }) => of(before) !== undefined).map(({ name, of, unit }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{show(of(before), unit)}</td>
            <td>{show(of(after), unit)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
