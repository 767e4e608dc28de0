/** Positions row by row: the numbers of a cam, the rows of a printed chart. */
import { useState } from 'preact/hooks';
import { type Column, withUnit } from '../../../core/adjuster/ask.ts';
import { tidy } from '../../../core/units/plain.ts';
import { cellPath, rowCount, rowTexts } from './adjuster-fields.ts';
import { type CamPlace, CamRound } from './cam-round.tsx';
import { NumbersField, Refused, TextField } from './field.tsx';
import type { Form } from './form.ts';
import { cardUnits, lengthOf, plainOf, unitWord } from './numbers.ts';

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
      {columns.some(({ name }) => name.startsWith('offset')) && (
        <Circle form={form} path={path} columns={columns} rows={rows} />
      )}
      {Array.from({ length: rows }, (_, i) => (
        <div key={`${path}[${i}]`} class="cam-row">
          {first && <TextField form={form} path={cellPath(`${path}[${i}]`, first)} label={first.label} />}
          <NumbersField
            form={form}
            label={
              others[0]?.as === 'degrees'
                ? withUnit('adds', unitWord('degrees'))
                : `moves the point, ${cardUnits().length}`
            }
            parts={others.map((column) => ({ label: column.label, path: cellPath(`${path}[${i}]`, column) }))}
          />
        </div>
      ))}
      <Refused path={path} />
      {Array.from({ length: rows }, (_, i) => `${path}[${i}]`)
        .flatMap((row) => [row, `${row}.offset`])
        .map((row) => (
          <Refused key={row} path={row} />
        ))}
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

/** Where number 1 may be, as degrees from outboard towards the top. */
const FIRST = [
  ['0', 'outboard'],
  ['90', 'up'],
  ['180', 'inboard'],
  ['270', 'down'],
] as const;
const MOST = 60;

/** So many numbers evenly round a bush, so far off its middle, from number 1 on towards the top where that is outboard. */
export function roundPlaces(count: number, offset: number, first: number): CamPlace[] {
  return Array.from({ length: count }, (_, i) => {
    const turn = (first * Math.PI) / 180 + (2 * Math.PI * i) / count;
    return { label: String(i + 1), offset: [0, tidy(offset * Math.cos(turn)), tidy(offset * Math.sin(turn))] };
  });
}

/** The numbers as they stand in the rows, where all of them have an offset. */
function typedPlaces(form: Form, path: string, columns: readonly Column[], rows: number): CamPlace[] {
  const [label, ...lengths] = columns;
  return Array.from({ length: rows }, (_, i) => `${path}[${i}]`).flatMap((row) => {
    const offset = lengths.map((column) => lengthOf(form.texts[cellPath(row, column)]) ?? 0);
    const isWhole = label && offset.length === 3 && offset.every((x) => typeof x === 'number');
    return isWhole
      ? [{ label: form.texts[cellPath(row, label)] ?? '', offset: offset as unknown as CamPlace['offset'] }]
      : [];
  });
}

/** A cam whose numbers lie evenly round, without typing each; drawn as it is meant before it is laid down. */
function Circle({ form, path, columns, rows }: Pick<Props, 'form' | 'path' | 'columns'> & { readonly rows: number }) {
  const [count, setCount] = useState('');
  const [offset, setOffset] = useState('');
  const [first, setFirst] = useState('0');
  const numbers = plainOf(count);
  const radius = lengthOf(offset);
  const good =
    typeof numbers === 'number' &&
    Number.isInteger(numbers) &&
    numbers >= 2 &&
    numbers <= MOST &&
    typeof radius === 'number' &&
    radius > 0;
  const meant = good ? roundPlaces(numbers, radius, Number(first)) : [];
  const shown = meant.length > 0 ? meant : typedPlaces(form, path, columns, rows);
  const lay = () =>
    form.replace(
      `${path}[`,
      Object.assign({}, ...meant.map(({ label, offset }, i) => rowTexts(columns, { label, offset }, `${path}[${i}]`))),
    );
  return (
    <>
      {shown.length > 1 && <CamRound places={shown} />}
      <p class="soft">Evenly round? Say how many numbers, how far off the middle, and where number 1 puts the point.</p>
      <div class="circle">
        <label>
          <span class="soft">numbers</span>
          <input
            type="text"
            inputMode="numeric"
            value={count}
            onInput={(event) => setCount(event.currentTarget.value)}
          />
        </label>
        <label>
          <span class="soft">off centre, {cardUnits().length}</span>
          <input
            type="text"
            inputMode="decimal"
            value={offset}
            onInput={(event) => setOffset(event.currentTarget.value)}
          />
        </label>
        <label>
          <span class="soft">number 1 is</span>
          <select value={first} onChange={(event) => setFirst(event.currentTarget.value)}>
            {FIRST.map(([angle, name]) => (
              <option key={angle} value={angle}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </div>
      <button type="button" class="quiet wide" disabled={!good} onClick={lay}>
        Lay round
      </button>
    </>
  );
}
