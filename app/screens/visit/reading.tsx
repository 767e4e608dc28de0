/** A reading that is down on the card: its figures with their marks, and the way to correct it. */
import type { AxleName } from '../../../core/contract.ts';
import { type GridCell, ReadingGrid } from '../../parts/reading-grid.tsx';
import { anglesOf, angleWord, cornersOf, fieldsOf } from '../../state/fields.ts';
import { verdictOf, windowOf } from '../../state/judge.ts';
import { units } from '../../state/preferences.ts';
import { valueText } from '../../state/units.ts';
import { correctReading } from '../../state/visit-actions.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  /** Only the last reading of an open visit can be corrected: later ones were taken in the light of it. */
  readonly open: boolean;
}

export function ReadingBody({ view, round, open }: Props) {
  const { car, spec } = view.car;
  const { reading } = round.record;
  const sai = units.value.sai || Object.values(reading).some((one) => typeof one === 'object' && one.sai !== undefined);
  const cells: [string, GridCell][] = fieldsOf(car, sai).map(({ id, corner, angle }) => {
    const value = reading[corner]?.[angle];
    const window = windowOf(spec, corner, angle);
    if (value === undefined) return [id, { text: '' }];
    const text = valueText(angle, value, car.wheel.rimDiameter);
    return [id, window ? { text, verdict: verdictOf(value, window) } : { text }];
  });
  return (
    <>
      {(['front', 'rear'] satisfies AxleName[]).map((axle) => (
        <ReadingGrid
          key={axle}
          rows={anglesOf(car, axle, sai).map((angle) => ({ id: angle, label: angleWord(angle) }))}
          columns={cornersOf(axle).map((corner) => ({ id: corner, corner }))}
          values={Object.fromEntries(cells)}
        />
      ))}
      {open && (
        <button type="button" class="quiet wide" onClick={() => correctReading(view, round)}>
          Change a reading
        </button>
      )}
    </>
  );
}
