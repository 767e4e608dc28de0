/** The numbers of a cam and where each puts the point: typed, or laid round a circle and then corrected. */
import { useState } from 'preact/hooks';
import { NumbersField, Refused, TextField } from './field.tsx';
import type { Form } from './form.ts';
import { lengthOf, lengthText, plainOf, type Texts } from './numbers.ts';

interface Props {
  readonly form: Form;
  readonly path: string;
  readonly label: string;
}

export function CamTable({ form, path, label }: Props) {
  const rows = rowsOf(form.texts, path);
  const add = () => form.put(rowTexts(path, rows, String(rows + 1), [0, 0, 0]));
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
      <Circle form={form} path={path} />
      {Array.from({ length: rows }, (_, i) => (
        <div key={`${path}[${i}]`} class="cam-row">
          <TextField form={form} path={`${path}[${i}].label`} label="number" />
          <NumbersField
            form={form}
            label="moves the point"
            parts={['forward', 'outboard', 'up'].map((name, j) => ({
              label: name,
              path: `${path}[${i}].offset[${j}]`,
            }))}
          />
        </div>
      ))}
      <Refused path={path} />
      <div class="pair">
        <button type="button" class="quiet" onClick={add}>
          Add a number
        </button>
        <button type="button" class="quiet" disabled={rows === 0} onClick={drop}>
          Take the last off
        </button>
      </div>
    </fieldset>
  );
}

const rowsOf = (texts: Texts, path: string): number => {
  let rows = 0;
  while (`${path}[${rows}].label` in texts) rows += 1;
  return rows;
};

function rowTexts(path: string, i: number, label: string, offset: readonly number[]): Texts {
  return {
    [`${path}[${i}].label`]: label,
    ...Object.fromEntries(offset.map((x, j) => [`${path}[${i}].offset[${j}]`, lengthText(x)])),
  };
}

/** Numbers evenly round a bush with an off-centre hole: number 1 outboard, the rest towards the top. */
function Circle({ form, path }: Omit<Props, 'label'>) {
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
      return rowTexts(path, i, String(i + 1), [0, radius * Math.cos(turn), radius * Math.sin(turn)]);
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
