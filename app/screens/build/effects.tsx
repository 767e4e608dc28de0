/** What one step of each adjuster does to its wheel, shown as soon as the core can work it out. */
import type { Adjuster, AxleName, Suspension } from '../../../core/contract.ts';
import { InputError } from '../../../core/input-error.ts';
import { formatAngle } from '../../../core/units/format.ts';
import { engine } from '../../engine/index.ts';
import { useAsked } from '../../state/asking.ts';
import { units } from '../../state/preferences.ts';
import { fileOf } from './car-texts.ts';
import type { Form } from './form.ts';

export function Effects({ form, axle }: { readonly form: Form; readonly axle: AxleName }) {
  // The core checks what the texts say: these casts promise nothing.
  const { suspension, adjusters } = fileOf(form.texts, form.id, form.record).car[axle] as unknown as {
    suspension: Suspension;
    adjusters: Adjuster[];
  };
  const question = adjusters.length > 0 ? `effects ${JSON.stringify([suspension, adjusters])}` : undefined;
  const { value, error } = useAsked(question, (signal) =>
    engine.call('adjusterEffects', [suspension, adjusters], { signal, latest: `effects ${axle}` }),
  );
  if (!question) return null;
  if (!value) {
    return (
      <p class="soft" role="status">
        {error instanceof InputError
          ? `What a step does shows here once ${error.field} is right: ${error.allowed}.`
          : (error?.message ?? 'Working out what a step does…')}
      </p>
    );
  }
  const show = (degrees: number | undefined) =>
    degrees === undefined ? '–' : formatAngle(degrees, { sign: true, decimal: units.value.decimal });
  const caster = value.some((one) => one.caster !== undefined);
  return (
    <table class="paper-table effects">
      <caption>What one step does, degrees</caption>
      <thead>
        <tr>
          <th scope="col">Step</th>
          {caster && <th scope="col">Caster</th>}
          <th scope="col">Camber</th>
          <th scope="col">Toe</th>
        </tr>
      </thead>
      <tbody>
        {value.map((one) => (
          <tr key={one.adjuster}>
            <th scope="row">
              {adjusters.find(({ id }) => id === one.adjuster)?.name}: {one.step}
            </th>
            {caster && <td>{show(one.caster)}</td>}
            <td>{show(one.camber)}</td>
            <td>{show(one.toe)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
