/** A reading that is down on the card: its figures with their marks, and the way to correct it. */
import { angleOf } from '../../../core/reading/axle-angles.ts';
import type { GridCell } from '../../parts/reading-grid.tsx';
import { againstText } from '../../state/against.ts';
import { correctReading } from '../../state/correct-reading.ts';
import type { Field } from '../../state/fields.ts';
import { formOfRecord } from '../../state/form.ts';
import { verdictOf, windowOf } from '../../state/judge.ts';
import { measuredWith } from '../../state/methods.ts';
import { valueText } from '../../state/units.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { FormGrid } from './form-grid.tsx';
import { VerdictList } from './verdict-list.tsx';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  /** Only the last reading of an open visit can be corrected: later ones were taken in the light of it. */
  readonly open: boolean;
}

export function ReadingBody({ view, round, open }: Props) {
  const { car, spec } = view.car;
  const { reading } = round.record;
  const cell = (field: Field): GridCell => {
    const value = angleOf(reading, field.where, field.angle);
    const window = windowOf(spec, field);
    if (value === undefined) return { text: '' };
    const text = valueText(field.angle, value, car.wheel.rimDiameter);
    return window ? { text, verdict: verdictOf(value, window) } : { text };
  };
  return (
    <>
      <FormGrid car={car} form={formOfRecord(round.record)} cell={cell} />
      <VerdictList car={view.car} reading={reading} form={formOfRecord(round.record)} />
      <p class="soft">{againstText(round.record)}</p>
      {measuredWith(reading).map((one) => (
        <p key={one} class="soft">
          {one}
        </p>
      ))}
      {open && (
        <button type="button" class="quiet wide" onClick={() => correctReading(view, round)}>
          Change a reading
        </button>
      )}
    </>
  );
}
