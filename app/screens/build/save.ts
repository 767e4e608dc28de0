/** The build card saved: the core checks the whole of it, and nothing is lost where it refuses. */
import type { Car, Spec } from '../../../core/contract.ts';
import { InputError } from '../../../core/input-error.ts';
import type { CarRecord } from '../../../core/records/stored.ts';
import { edited } from '../../../core/records/versions.ts';
import { engine } from '../../engine/index.ts';
import { dropDraft, keep } from '../../state/records.ts';
import { now } from '../../store/index.ts';
import { fileOf } from './car-texts.ts';
import { type Form, formDraft, refusal } from './form.ts';
import { problems, problemsOf } from './problems.ts';

/** @throws InputError, the first of what is not right */
export async function saved(form: Form): Promise<CarRecord> {
  refusal.value = undefined;
  const found = await problemsOf(form);
  problems.value = found;
  const [first] = found;
  if (first) throw new InputError(first.field ?? '', first.value, first.rule);
  // Unchecked as it goes in: the check is what is asked for.
  const file = await engine.call('validateCarFile', [fileOf(form.texts, form.id, form.record)]);
  const { car, spec = {} } = file as { car: Car; spec?: Spec };
  const practice = form.record?.practice ? { practice: true } : {};
  const record = edited(form.record, { id: form.id, car, spec, ...practice }, now());
  keep(['cars', record]);
  dropDraft(formDraft(form.id));
  return record;
}
