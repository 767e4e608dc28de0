/** A reading as a ruled form, axle under axle: whoever shows one brings the cells. */
import type { Car } from '../../../core/contract.ts';
import { isAxle } from '../../../core/corners.ts';
import { type GridCell, type GridRow, ReadingGrid } from '../../parts/reading-grid.tsx';
import { angleWord, cornersOf, type Field, rowsOf } from '../../state/fields.ts';
import type { Form } from '../../state/form.ts';

interface Props {
  readonly car: Car;
  readonly form: Form;
  readonly cell: (field: Field) => GridCell;
  readonly active?: string | undefined;
  readonly onPick?: (cell: string) => void;
}

export function FormGrid({ car, form, cell, active, onPick }: Props) {
  return (
    <>
      {(['front', 'rear'] as const).map((axle) => {
        const rows = rowsOf(car, axle, form);
        return (
          <ReadingGrid
            key={axle}
            rows={rows.flatMap(rowOf)}
            columns={cornersOf(axle).map((corner) => ({ id: corner, corner }))}
            values={Object.fromEntries(rows.flat().map((field) => [field.id, cell(field)]))}
            {...(active ? { active } : {})}
            {...(onPick ? { onPick } : {})}
          />
        );
      })}
    </>
  );
}

function rowOf([field]: readonly Field[]): GridRow[] {
  if (!field) return [];
  const { id, where, angle } = field;
  return [{ id: angle, label: angleWord(angle), ...(isAxle(where) ? { whole: { cell: id, of: where } } : {}) }];
}
