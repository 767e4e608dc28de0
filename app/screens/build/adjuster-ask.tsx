/** One field of an adjuster, asked as its kind says. A new kind of adjuster needs nothing here. */
import { type AskedField, withUnit } from '../../../core/adjuster/ask.ts';
import { mayBeBelowZero } from '../../../core/adjuster/below-zero.ts';
import type { AxleName } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { jointsOf, rodsOf } from '../../../core/suspension/joints.ts';
import { SuspensionDrawing } from '../../parts/suspension-drawing.tsx';
import { words } from '../../state/words.ts';
import { writtenChoice } from './adjuster-fields.ts';
import { hasOwnRight, indices } from './car-texts.ts';
import { DirectionField } from './direction.tsx';
import { ChoiceField, NumbersField, SeveralField, TextField } from './field.tsx';
import type { Form } from './form.ts';
import { cardUnits, unitWord } from './numbers.ts';
import { pointsOf } from './points.ts';
import { Table } from './table.tsx';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
  /** Of the field: `car.front.adjusters[0].at`. */
  readonly path: string;
  readonly field: AskedField;
}

export function AdjusterAsk({ form, axle, path, field: { name, ask, hint, optional, label: asked } }: Props) {
  const suspension = form.texts[`car.${axle}.suspension.kind`] ?? '';
  const held = suspensionKinds[suspension];
  const drawn = `car.${axle}.${ownSide(form, axle, path) ? 'rightSuspension' : 'suspension'}`;
  const joint = (name: string): readonly [string, string] => [name, words.point(name)];
  const label = optional ? `${asked} (if any)` : asked;
  const common = { form, path, label, hint };
  const choose = (choices: readonly (readonly [string, string])[]) => (
    <ChoiceField {...common} choices={optional ? [['', 'not known, or none'], ...choices] : choices} />
  );
  switch (ask.as) {
    case 'choice':
      return choose(ask.choices.map(([value, name]) => [writtenChoice(value), name]));
    case 'yes-no':
      return (
        <ChoiceField
          {...common}
          choices={[
            ['yes', 'yes'],
            ['no', 'no'],
          ]}
        />
      );
    case 'point':
      return (
        <>
          <Where form={form} path={drawn} ringed={[form.texts[path] ?? '']} />
          {choose(held ? jointsOf(held).map(joint) : [])}
        </>
      );
    case 'links': {
      const chosen = (form.texts[path] ?? '').split(' ');
      const ends = held?.links?.filter(([inner]) => chosen.includes(inner)).flat() ?? [];
      return (
        <>
          <Where form={form} path={drawn} ringed={ends} />
          <SeveralField {...common} choices={held ? rodsOf(held).map(joint) : []} />
        </>
      );
    }
    case 'partner':
      return choose(partners(form, path));
    case 'direction':
      return <DirectionField form={form} path={path} label={label} />;
    case 'range':
      return (
        <NumbersField
          form={form}
          label={withUnit(label, unitWord(ask.unit))}
          parts={[
            { label: 'from', path: `${path}[0]` },
            { label: 'to', path: `${path}[1]` },
          ]}
          whole={path}
        />
      );
    case 'table':
      return <Table {...common} columns={ask.columns} />;
    default: {
      const unit =
        ask.as === 'length' || ask.as === 'lengths' ? cardUnits().length : 'unit' in ask ? unitWord(ask.unit) : '';
      const isNumber = ask.as === 'length' || ask.as === 'number';
      const kind = form.texts[`${path.slice(0, -name.length)}kind`] ?? '';
      return (
        <TextField
          {...common}
          label={withUnit(label, unit)}
          mode={isNumber ? 'decimal' : 'text'}
          signed={isNumber && mayBeBelowZero(kind, name)}
        />
      );
    }
  }
}

/** Whether the field is of a right side that has points of its own. */
const ownSide = ({ texts }: Form, axle: AxleName, path: string): boolean =>
  hasOwnRight(texts, axle) && path.startsWith(`car.${axle}.rightAdjusters`);

/** The axle's drawing with what the adjuster moves ringed. */
function Where({ form, path, ringed }: Pick<Props, 'form' | 'path'> & { readonly ringed: readonly string[] }) {
  return (
    <SuspensionDrawing
      kind={form.texts[`${path}.kind`] ?? ''}
      highlight={ringed.filter(Boolean)}
      points={pointsOf(form.texts, path)}
    />
  );
}

/** Other adjusters of the list of the same kind, by the names that the card shows. */
function partners(form: Form, path: string): (readonly [string, string])[] {
  const all = path.slice(0, path.indexOf('['));
  const own = Number.parseInt(path.slice(all.length + 1), 10);
  const text = (i: number, name: string): string => form.texts[`${all}[${i}].${name}`] ?? '';
  return indices(form.texts, all)
    .filter((i) => i !== own && text(i, 'kind') === text(own, 'kind'))
    .map((i) => [text(i, 'id'), text(i, 'name')]);
}
