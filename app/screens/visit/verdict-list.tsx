/** A reading as a verdict: how many windows are missed, and what the two wheels of an axle make together, each with its mark. */
import './verdict-list.css';
import { AXLE_ANGLES, type AxleName, type Reading } from '../../../core/contract.ts';
import { AXLES } from '../../../core/corners.ts';
import { assess } from '../../../core/reading/assess.ts';
import { angleOf } from '../../../core/reading/axle-angles.ts';
import { levelled } from '../../../core/reading/steering-wheel.ts';
import type { CarRecord } from '../../../core/records/stored.ts';
import { Verdict } from '../../parts/verdict.tsx';
import { canTotal } from '../../state/fields.ts';
import type { Form } from '../../state/form.ts';
import { placeWord, verdictOf, windowOf } from '../../state/judge.ts';
import { valueText } from '../../state/units.ts';

/** A body that leans to one side takes the camber of both wheels with it: how level it stands comes beside cross camber. */
const OF_BOTH = AXLE_ANGLES.flatMap((angle) => (angle === 'crossCamber' ? [angle, 'crossHeight' as const] : [angle]));

const heightsText = (reading: Reading, axle: AxleName): string =>
  AXLES[axle]
    .map((corner) => `${corner} ${valueText('rideHeight', reading.rideHeights?.[corner] ?? 0, undefined)}`)
    .join(', ');

interface Props {
  readonly car: CarRecord;
  readonly reading: Reading;
  readonly form: Form;
}

export function VerdictList({ car: { car, spec }, reading: typed, form }: Props) {
  const reading = levelled(typed, car);
  const { angles } = assess(reading, spec);
  const read = angles.filter(({ state }) => state !== 'unmeasured');
  if (read.length === 0) return null;
  const out = read.filter(({ by }) => by !== 0).length;
  // That an axle runs straight was taken for granted where its total alone was read.
  const isTaken = (axle: AxleName, angle: string) => form.total && angle === 'thrustAngle' && canTotal(car, axle);
  const show = (angle: string, value: number) => valueText(angle, value, car.wheel.rimDiameter);
  const rows = (['front', 'rear'] as const).flatMap((where) =>
    OF_BOTH.flatMap((angle) => {
      const value = angleOf(reading, where, angle);
      if (value === undefined || isTaken(where, angle)) return [];
      if (angle === 'crossHeight')
        return { where, angle, value, window: undefined, beside: heightsText(reading, where) };
      const window = spec[where]?.[angle] ?? (angle === 'totalToe' ? windowOf(spec, { where, angle }) : undefined);
      const beside = window ? `${show(angle, window.low)} to ${show(angle, window.high)}` : 'no window on file';
      return { where, angle, value, window, beside };
    }),
  );
  return (
    <section class="verdicts" aria-label="How it stands">
      <p>
        <strong>
          {out === 0 ? `All ${read.length} windows met` : `${out} of ${read.length} windows missed`}
          {read.length < angles.length && `, ${angles.length - read.length} not measured`}
        </strong>
      </p>
      <ul>
        {rows.map(({ where, angle, value, window, beside }) => (
          <li key={`${where} ${angle}`}>
            <Verdict state={window ? verdictOf(value, window) : 'unknown'} label={placeWord(car, where, angle)} />
            <strong>{show(angle, value)}</strong>
            <small class="soft">{beside}</small>
          </li>
        ))}
      </ul>
    </section>
  );
}
