/** First load. What the rack gives: toe of each wheel or the axle's total, SAI or not, how an axle on links stands. */
import { canTotal, hasSai, isOnLinks } from '../../state/fields.ts';
import { changeForm, entryForm } from '../../state/visit-actions.ts';
import type { VisitView } from '../../state/visits.ts';

export function FormChoice({ view }: { readonly view: VisitView }) {
  const { car } = view.car;
  const { sai, total, axle = false } = entryForm(view);
  const front = canTotal(car, 'front') ? 'Steering wheel clamped straight' : 'Front toe of each wheel';
  return (
    <>
      <fieldset class="choice">
        <legend>Toe</legend>
        <button type="button" aria-pressed={!total} onClick={() => changeForm(view, { total: false })}>
          each wheel
        </button>
        <button type="button" aria-pressed={total} onClick={() => changeForm(view, { total: true })}>
          axle total
        </button>
      </fieldset>
      {total && <p class="soft">{front}, rear taken as straight: each wheel has half of its total.</p>}
      {hasSai(car) && <Too what="SAI" on={sai} onChange={(sai) => changeForm(view, { sai })} />}
      {[car.front, car.rear].some(isOnLinks) && (
        <Too what="Pinion and axle’s place" on={axle} onChange={(axle) => changeForm(view, { axle })} />
      )}
    </>
  );
}

interface TooProps {
  readonly what: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}

function Too({ what, on, onChange }: TooProps) {
  return (
    <label class="torque">
      <input type="checkbox" checked={on} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>{what} too</span>
    </label>
  );
}
