/** The adjusters of one axle: chosen by drawing, described field by field, with what one step of each does at once. */

import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import type { AxleName } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { adjusterPictures } from '../../parts/drawings/catalogue.ts';
import { suspensionPictures } from '../../parts/drawings/suspension-catalogue.ts';
import { ADJUSTER_FIELDS, type AdjusterField } from './adjuster-fields.ts';
import { CamTable } from './cam-table.tsx';
import { indices } from './car-texts.ts';
import { Effects } from './effects.tsx';
import { ChoiceField, NumbersField, Refused, TextField } from './field.tsx';
import type { Form } from './form.ts';
import { newAdjuster, SAMPLES, withoutAdjuster } from './new-adjuster.ts';
import { cardUnits } from './numbers.ts';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
}

export function AdjustersSection({ form, axle }: Props) {
  const path = `car.${axle}.adjusters`;
  const all = indices(form.texts, path);
  return (
    <>
      {all.map((i) => (
        <AdjusterForm key={form.texts[`${path}[${i}].id`] ?? i} form={form} axle={axle} index={i} />
      ))}
      <Refused path={path} />
      <Effects form={form} axle={axle} />
      <fieldset class="kinds">
        <legend>Add an adjuster</legend>
        {Object.values(adjusterKinds).map(({ kind, name }) => (
          <button
            key={kind}
            type="button"
            class="kind"
            onClick={() =>
              form.put(newAdjuster(kind, name, path, all.length === 0 ? 0 : Math.max(...all) + 1, form.texts))
            }
          >
            <Sample kind={kind} />
            {name}
          </button>
        ))}
      </fieldset>
    </>
  );
}

/** The kind's drawing with a made-up move, for choosing by eye. */
function Sample({ kind }: { readonly kind: string }) {
  const picture = adjusterPictures[kind];
  const sample = SAMPLES[kind];
  return picture && sample ? <picture.Picture {...sample} corner="LF" /> : null;
}

function AdjusterForm({ form, axle, index }: Props & { readonly index: number }) {
  const path = `car.${axle}.adjusters[${index}]`;
  const kind = form.texts[`${path}.kind`] ?? '';
  const takeAway = () =>
    form.replace(`car.${axle}.adjusters`, withoutAdjuster(form.texts, `car.${axle}.adjusters`, index));
  return (
    <section class="adjuster-form">
      <header class="adjuster-head">
        <h3>{form.texts[`${path}.name`] || adjusterKinds[kind]?.name}</h3>
        <button type="button" class="quiet" onClick={takeAway}>
          Take off
        </button>
      </header>
      {(ADJUSTER_FIELDS[kind] ?? []).map((field) => (
        <AdjusterAsk key={field.name} form={form} axle={axle} path={`${path}.${field.name}`} field={field} />
      ))}
      <Refused path={path} />
      <Refused path={`${path}.id`} />
    </section>
  );
}

interface AskProps extends Props {
  readonly path: string;
  readonly field: AdjusterField;
}

function AdjusterAsk({ form, axle, path, field: { ask, label, hint } }: AskProps) {
  const suspension = form.texts[`car.${axle}.suspension.kind`] ?? '';
  const names = suspensionPictures[suspension]?.labels ?? {};
  const joint = (name: string): readonly [string, string] => [name, names[name] ?? name];
  const links = suspensionKinds[suspension]?.links ?? [];
  switch (ask.as) {
    case 'choice':
      return <ChoiceField form={form} path={path} label={label} hint={hint} choices={ask.choices} />;
    case 'point':
      return <ChoiceField form={form} path={path} label={label} choices={links.map(([inner]) => joint(inner))} />;
    case 'link':
      return <ChoiceField form={form} path={path} label={label} choices={links.map(([inner]) => joint(inner))} />;
    case 'range':
      return (
        <NumbersField
          form={form}
          label={`${label}, ${ask.unit}`}
          parts={[
            { label: 'from', path: `${path}[0]` },
            { label: 'to', path: `${path}[1]` },
          ]}
        />
      );
    case 'cam-table':
      return <CamTable form={form} path={path} label={label} />;
    default: {
      const unit = ask.as === 'length' || ask.as === 'lengths' ? cardUnits().length : ask.unit;
      const mode = ask.as === 'text' || ask.as === 'lengths' ? 'text' : 'decimal';
      return <TextField form={form} path={path} label={unit ? `${label}, ${unit}` : label} hint={hint} mode={mode} />;
    }
  }
}
