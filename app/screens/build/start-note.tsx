/** That an axle starts from what was learned of another car of its build, chosen by a person, until it is left out. */
import type { AxleName } from '../../../core/contract.ts';
import { startOfText, startPath } from './axle-start.ts';
import type { Form } from './form.ts';

export function StartNote({ form, axle }: { readonly form: Form; readonly axle: AxleName }) {
  const start = startOfText(form.texts, axle);
  if (!start) return null;
  return (
    <div class="undo" role="status">
      <span>
        Starts from what {start.readings} readings of {start.of} have taught.
      </span>
      <button type="button" class="quiet" onClick={() => form.put({ [startPath(axle)]: '' })}>
        Leave it out
      </button>
    </div>
  );
}
