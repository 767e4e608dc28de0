/** The adjusters of one axle: chosen by drawing, described field by field, with what one step of each does at once. */

import type { AskedField } from '../../../core/adjuster/ask.ts';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { misfit } from '../../../core/adjuster/fits.ts';
import type { Adjuster, AxleName } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { jointsOf, rodsOf } from '../../../core/suspension/kind.ts';
import { adjusterPictures } from '../../parts/drawings/catalogue.ts';
import { suspensionPictures } from '../../parts/drawings/suspension-catalogue.ts';
import { fieldsOf } from './adjuster-fields.ts';
import { indices } from './car-texts.ts';
import { Effects } from './effects.tsx';
import { ChoiceField, NumbersField, Refused, TextField } from './field.tsx';
import type { Form } from './form.ts';
import { newAdjuster, withoutAdjuster } from './new-adjuster.ts';
import { cardUnits } from './numbers.ts';
import { Table } from './table.tsx';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
}

export function AdjustersSection({ form, axle }: Props) {
  const path = `car.${axle}.adjusters`;
  const all = indices(form.texts, path);
  const held = suspensionKinds[form.texts[`car.${axle}.suspension.kind`] ?? ''];
  const fitting = Object.values(adjusterKinds).filter((kind) => held && !misfit(kind, held));
  return (
    <>
      {all.map((i) => (
        <AdjusterForm key={form.texts[`${path}[${i}].id`] ?? i} form={form} axle={axle} index={i} />
      ))}
      <Refused path={path} />
      <Effects form={form} axle={axle} />
      <fieldset class="kinds">
        <legend>Add an adjuster</legend>
        {fitting.map(({ kind, name }) => (
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
  const sample = adjusterKinds[kind]?.sample;
  if (!picture || !sample) return null;
  const adjuster = { ...sample.adjuster, id: 'sample', kind } as unknown as Adjuster;
  return <picture.Picture adjuster={adjuster} from={sample.from} to={sample.to} corner="LF" />;
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
      {fieldsOf(kind).map((field) => (
        <AdjusterAsk key={field.name} form={form} axle={axle} path={`${path}.${field.name}`} field={field} />
      ))}
      <Refused path={path} />
      <Refused path={`${path}.id`} />
    </section>
  );
}

interface AskProps extends Props {
  readonly path: string;
  readonly field: AskedField;
}

/** Ways that most adjusters push a point; any other is typed. */
const WAYS: readonly (readonly [string, string])[] = [
  ['0 1 0', 'outboard'],
  ['0 -1 0', 'inboard'],
  ['1 0 0', 'forward'],
  ['-1 0 0', 'rearward'],
  ['0 0 1', 'up'],
  ['0 0 -1', 'down'],
];
const SLANT = '0 1 0.1';

function AdjusterAsk({ form, axle, path, field: { ask, hint, optional, label: asked } }: AskProps) {
  const suspension = form.texts[`car.${axle}.suspension.kind`] ?? '';
  const held = suspensionKinds[suspension];
  const names = suspensionPictures[suspension]?.labels ?? {};
  const joint = (name: string): readonly [string, string] => [name, names[name] ?? name];
  const label = optional ? `${asked} (if any)` : asked;
  const choose = (choices: readonly (readonly [string, string])[]) => (
    <ChoiceField
      form={form}
      path={path}
      label={label}
      hint={hint}
      choices={optional ? [['', 'not known, or none'], ...choices] : choices}
    />
  );
  switch (ask.as) {
    case 'choice':
      return choose(ask.choices.map(([value, name]) => [plain(value), name]));
    case 'point':
      return choose(held ? jointsOf(held).map(joint) : []);
    case 'link':
      return choose(held ? rodsOf(held).map(joint) : []);
    case 'partner':
      return choose(partners(form, axle, path));
    case 'direction':
      return (
        <>
          {choose([...WAYS, [SLANT, 'at a slant, typed below']])}
          {!WAYS.some(([way]) => way === (form.texts[path] ?? '')) && form.texts[path] && (
            <TextField
              form={form}
              path={path}
              label="forward, outboard, up"
              hint="three numbers; how long does not matter"
            />
          )}
        </>
      );
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
    case 'table':
      return <Table form={form} path={path} label={label} hint={hint} columns={ask.columns} />;
    default: {
      const unit = ask.as === 'length' || ask.as === 'lengths' ? cardUnits().length : 'unit' in ask ? ask.unit : '';
      const mode = ask.as === 'length' || ask.as === 'number' ? 'decimal' : 'text';
      return <TextField form={form} path={path} label={unit ? `${label}, ${unit}` : label} hint={hint} mode={mode} />;
    }
  }
}

const plain = (value: string | number): string =>
  typeof value === 'number' ? String(Number(value.toFixed(6))) : value;

/** Other adjusters of the axle of the same kind, by the names that the card shows. */
function partners(form: Form, axle: AxleName, path: string): (readonly [string, string])[] {
  const all = `car.${axle}.adjusters`;
  const own = Number.parseInt(path.slice(all.length + 1), 10);
  const text = (i: number, name: string): string => form.texts[`${all}[${i}].${name}`] ?? '';
  return indices(form.texts, all)
    .filter((i) => i !== own && text(i, 'kind') === text(own, 'kind'))
    .map((i) => [text(i, 'id'), text(i, 'name')]);
}
