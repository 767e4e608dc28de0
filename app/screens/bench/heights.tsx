import { type Angle, type Car, CORNERS, type Corner } from '../../../core/contract.ts';
import { heightsOff, type RideHeights } from '../../../core/measure/ride-heights.ts';
import type { HeightEffect } from '../../../core/pose/height.ts';
import { wheelAngle } from '../../../core/units/shop.ts';
import { engine } from '../../engine/index.ts';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { HeightsDrawing } from '../../parts/drawings/bench/heights.tsx';
import { useAsked } from '../../state/asking.ts';
import type { Handed } from '../../state/bench.ts';
import { angleWord } from '../../state/fields.ts';
import { units } from '../../state/preferences.ts';
import { records } from '../../state/records.ts';
import { angleText } from '../../state/units.ts';
import { lastSettings } from '../../state/visits.ts';
import { why } from '../../state/why.ts';
import { type Ask, type At, behind, type Tool } from './tool.ts';

const rowOf = (list: 'measured' | 'wanted', corners: readonly Corner[]): readonly Ask[] =>
  corners.map((corner) => ({ id: `${list}.${corner}`, label: corner, is: 'length' }));
const heightsOf = (at: At, list: 'measured' | 'wanted'): RideHeights =>
  Object.fromEntries(
    CORNERS.flatMap((corner) => {
      const read = at.length(`${list}.${corner}`);
      return read === undefined ? [] : [[corner, read]];
    }),
  );

export const heights: Tool = {
  id: 'heights',
  title: 'Ride heights',
  Drawing: HeightsDrawing,
  before: [
    'Level floor, tyres and pressures as the maker says, load and fuel too',
    'Bounced and settled, nobody in the car',
    'The places that the maker names, else the arch over each hub',
  ],
  caution: 'Height first, then the angles: they hang on it.',
  steps: () => [
    { says: 'As it stands', asks: [rowOf('measured', ['LF', 'RF']), rowOf('measured', ['LR', 'RR'])] },
    { says: 'As it is to stand', optional: true, asks: [rowOf('wanted', ['LF', 'RF']), rowOf('wanted', ['LR', 'RR'])] },
  ],
  work: (at) => {
    const [measured, wanted] = [heightsOf(at, 'measured'), heightsOf(at, 'wanted')];
    if (Object.keys(measured).length === 0) return undefined;
    const off = behind('', () => heightsOff(measured, wanted, at.scatter.tape));
    const car = at.view?.car.car;
    const raise = { front: off.front?.raise.value ?? 0, rear: off.rear?.raise.value ?? 0 };
    return {
      lines: (['front', 'rear'] as const).flatMap((axle) => {
        const one = off[axle];
        if (!one) return [];
        const name = axle === 'front' ? 'Front' : 'Rear';
        return [
          at.lengthLine(`${name} has to go up`, one.raise, 'large'),
          at.lengthLine(`${name}, left higher than right`, one.leftHigher),
        ];
      }),
      says: [
        ...(Object.keys(off).length === 0
          ? ['With the wanted heights beside them it tells what each angle gains.']
          : []),
        ...(car || Object.keys(off).length === 0
          ? []
          : ['Open the bench from a visit to see what each angle gains by it.']),
      ],
      part: car && (raise.front !== 0 || raise.rear !== 0) ? <Gains car={car} raise={raise} /> : undefined,
      hands: CORNERS.flatMap((corner): Handed[] => {
        const value = measured[corner];
        return value === undefined ? [] : [{ where: corner, angle: 'rideHeight', value }];
      }),
    };
  },
};

const ROWS: readonly Angle[] = ['caster', 'camber', 'toe', 'sai'];

/** What every angle gains once the car stands as it is to. */
function Gains({ car, raise }: { readonly car: Car; readonly raise: Readonly<Record<'front' | 'rear', number>> }) {
  const settings = lastSettings(records.value, car.id);
  const { value, error } = useAsked(`height ${JSON.stringify([car, settings, raise])}`, (signal) =>
    engine.call('heightEffect', [car, settings, raise], { signal }),
  );
  if (error) return <p role="alert">{why(error, { car })}</p>;
  if (!value) return <p class="soft">Working it out…</p>;
  return <GainTable told={value as HeightEffect} />;
}

/** @param told what each wheel gains, degrees; absent of one that nothing is known of */
export function GainTable({ told: { corners, pitch } }: { readonly told: HeightEffect }) {
  const known = (angle: Angle) => CORNERS.some((corner) => corners[corner]?.[angle] !== undefined);
  const show = (degrees: number | undefined): string => (degrees === undefined ? '–' : angleText(degrees, true));
  return (
    <>
      <table class="paper-table bench-table">
        <thead>
          <tr>
            <th scope="col">Gains</th>
            {CORNERS.map((corner) => (
              <th key={corner} scope="col">
                <CornerMark corner={corner} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ROWS.filter(known).map((angle) => (
            <tr key={angle}>
              <th scope="row">{angle === 'sai' ? 'SAI' : angleWord(angle)}</th>
              {CORNERS.map((corner) => (
                <td key={corner}>{show(corners[corner]?.[angle])}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="soft">
        {pitch === 0
          ? 'The body stays level.'
          : `The body pitches by ${wheelAngle(pitch, units.value)}, + nose up; that is in every figure.`}
      </p>
    </>
  );
}
