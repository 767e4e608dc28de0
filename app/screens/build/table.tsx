/** Positions row by row: the numbers of a cam, the rows of a printed chart. */
import { useState } from 'preact/hooks';
import type { Column } from '../../../core/adjuster/ask.ts';
import { cellPath, rowCount, rowTexts } from './adjuster-fields.ts';
import { NumbersField, Refused, TextField } from './field.tsx';
import type { Form } from './form.ts';
import { lengthOf, plainOf } from './numbers.ts';

interface Props {
  readonly form: Form;
  readonly path: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly columns: readonly Column[];
}

export function Table({ form, path, label, hint, columns }: Props) {
  const rows = rowCount(form.texts, path);
  const [first, ...others] = columns;
  const add = () => form.put(rowTexts(columns, { label: rows + 1 }, `${path}[${rows}]`));
  const drop = () =>
    form.replace(
      `${path}[`,
      Object.fromEntries(
        Object.entries(form.texts).filter(
          ([key]) => key.startsWith(`${path}[`) && !key.startsWith(`${path}[${rows - 1}].`),
        ),
      ),
    );
  return (
    <fieldset class="field">
      <legend>{label}</legend>
      {hint && <span class="soft">{hint}</span>}
      {columns.some(({ name }) => name.startsWith('offset')) && <Circle form={form} path={path} columns={columns} />}
      {Array.from({ length: rows }, (_, i) => (
        <div key={`${path}[${i}]`} class="cam-row">
          {first && <TextField form={form} path={cellPath(`${path}[${i}]`, first)} label={first.label} />}
          <NumbersField
            form={form}
            label={others[0]?.as === 'degrees' ? 'adds, degrees' : 'moves the point'}
            parts={others.map((column) => ({ label: column.label, path: cellPath(`${path}[${i}]`, column) }))}
          />
        </div>
      ))}
      <Refused path={path} />
      <div class="pair">
        <button type="button" class="quiet" onClick={add}>
          Add a {first?.label ?? 'row'}
        </button>
        <button type="button" class="quiet" disabled={rows === 0} onClick={drop}>
          Take the last off
        </button>
      </div>
    </fieldset>
  );
}

/** Numbers evenly round a bush with an off-centre hole: number 1 outboard, the rest towards the top. */
function Circle({ form, path, columns }: Pick<Props, 'form' | 'path' | 'columns'>) {
  const [count, setCount] = useState('');
  const [offset, setOffset] = useState('');
  const numbers = plainOf(count);
  const radius = lengthOf(offset);
  const good =
    Number.isInteger(numbers) &&
    (numbers as number) >= 2 &&
    (numbers as number) <= 60 &&
    typeof radius === 'number' &&
    radius > 0;
  const lay = () => {
    if (!good) return;
    const all = Array.from({ length: numbers as number }, (_, i) => {
      const turn = (2 * Math.PI * i) / (numbers as number);
      const offset = [0, radius * Math.cos(turn), radius * Math.sin(turn)];
      return rowTexts(columns, { label: i + 1, offset }, `${path}[${i}]`);
    });
    form.replace(`${path}[`, Object.assign({}, ...all));
  };
  return (
    <div class="circle">
      <label>
        <span class="soft">numbers</span>
        <input type="text" inputMode="numeric" value={count} onInput={(event) => setCount(event.currentTarget.value)} />
      </label>
      <label>
        <span class="soft">off centre</span>
        <input
          type="text"
          inputMode="decimal"
          value={offset}
          onInput={(event) => setOffset(event.currentTarget.value)}
        />
      </label>
      <button type="button" class="quiet" disabled={!good} onClick={lay}>
        Lay round
      </button>
    </div>
  );
}
