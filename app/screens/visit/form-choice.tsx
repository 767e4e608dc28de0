/** First load. What the rack gives: toe of each wheel or the axle's total, and SAI or not. */
import { canTotal, hasSai } from '../../state/fields.ts';
import { changeForm, entryForm } from '../../state/visit-actions.ts';
import type { VisitView } from '../../state/visits.ts';

export function FormChoice({ view }: { readonly view: VisitView }) {
  const { car } = view.car;
  const { sai, total } = entryForm(view);
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
      {hasSai(car) && (
        <label class="torque">
          <input
            type="checkbox"
            checked={sai}
            onChange={(event) => changeForm(view, { sai: event.currentTarget.checked })}
          />
          <span>SAI too</span>
        </label>
      )}
    </>
  );
}
