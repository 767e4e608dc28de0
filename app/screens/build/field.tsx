/** One field of the build card: its label, what is typed, and at once what the core refused there. */
import type { ComponentChildren } from 'preact';
import { InputError } from '../../../core/input-error.ts';
import { words } from '../../state/words.ts';
import type { Form } from './form.ts';
import { refusal } from './form.ts';

interface FieldProps {
  readonly form: Form;
  /** As the core names it: `car.wheel.rimDiameter`. */
  readonly path: string;
  readonly label: ComponentChildren;
  readonly hint?: string | undefined;
  readonly onFocus?: () => void;
}

/** The refusal of a path; with `inside` also of what lies in it and has no field of its own. */
export function refusedAt(path: string, inside = false): string | undefined {
  const error = refusal.value;
  if (!(error instanceof InputError)) return undefined;
  const { field, value, rule } = error;
  if (field === path) return words.refusal({ value, rule });
  // Which of what lies in it: the rest of the path, behind its own name.
  const place = field.slice(path.lastIndexOf('.') + 1);
  return inside && isInside(field, path) ? words.refusal({ field: place, value, rule }) : undefined;
}
const isInside = (field: string, path: string): boolean => field.startsWith(`${path}[`) || field.startsWith(`${path}.`);

export function Refused({ path, inside = false }: { readonly path: string; readonly inside?: boolean }) {
  const message = refusedAt(path, inside);
  return message ? (
    <span class="wrong" role="alert">
      {message}
    </span>
  ) : null;
}

export function TextField({
  form,
  path,
  label,
  hint,
  onFocus,
  mode = 'text',
}: FieldProps & { readonly mode?: 'text' | 'decimal' }) {
  return (
    <label class="field">
      <span>{label}</span>
      <input
        type="text"
        inputMode={mode}
        autocomplete="off"
        maxLength={400}
        value={form.texts[path] ?? ''}
        aria-invalid={refusedAt(path, true) !== undefined}
        onFocus={onFocus}
        onInput={(event) => form.put({ [path]: event.currentTarget.value })}
      />
      {hint && <span class="soft">{hint}</span>}
      <Refused path={path} inside />
    </label>
  );
}

interface ChoiceProps extends FieldProps {
  readonly choices: readonly (readonly [value: string, label: string])[];
}

export function ChoiceField({ form, path, label, hint, choices, onFocus }: ChoiceProps) {
  const value = form.texts[path] ?? '';
  const known = choices.some(([one]) => one === value);
  return (
    <label class="field">
      <span>{label}</span>
      <select
        value={value}
        aria-invalid={refusedAt(path) !== undefined}
        onFocus={onFocus}
        onChange={(event) => form.put({ [path]: event.currentTarget.value })}
      >
        {!known && <option value={value}>{value ? `as on file: ${value}` : 'choose'}</option>}
        {choices.map(([one, name]) => (
          <option key={one} value={one}>
            {name}
          </option>
        ))}
      </select>
      {hint && <span class="soft">{hint}</span>}
      <Refused path={path} />
    </label>
  );
}

interface ManyProps extends Omit<FieldProps, 'path'> {
  readonly parts: readonly { readonly path: string; readonly label: string }[];
  /** What they are together: a refusal of it is theirs. */
  readonly whole?: string;
}

/** A few numbers on one line: x y z, low aim high. */
export function NumbersField({ form, label, hint, parts, whole, onFocus }: ManyProps) {
  const allWrong = whole !== undefined && refusedAt(whole) !== undefined;
  return (
    <fieldset class="field numbers">
      <legend>{label}</legend>
      <div class="numbers-row">
        {parts.map(({ path, label: name }) => (
          <label key={path}>
            <span class="soft">{name}</span>
            <input
              type="text"
              inputMode="decimal"
              autocomplete="off"
              maxLength={40}
              value={form.texts[path] ?? ''}
              aria-invalid={allWrong || refusedAt(path) !== undefined}
              onFocus={onFocus}
              onInput={(event) => form.put({ [path]: event.currentTarget.value })}
            />
          </label>
        ))}
      </div>
      {hint && <span class="soft">{hint}</span>}
      {parts.map(({ path }) => (
        <Refused key={path} path={path} />
      ))}
      {whole !== undefined && <Refused path={whole} />}
    </fieldset>
  );
}

interface ButtonsProps<T extends string> {
  readonly legend: string;
  readonly hidden?: boolean;
  readonly options: readonly (readonly [value: T, label: string])[];
  readonly value: T;
  readonly onPick: (value: T) => void;
}

/** One of two or three, all in sight. */
export function Buttons<T extends string>({ legend, hidden = false, options, value, onPick }: ButtonsProps<T>) {
  return (
    <fieldset class="choice">
      <legend class={hidden ? 'visually-hidden' : ''}>{legend}</legend>
      {options.map(([one, label]) => (
        <button key={one} type="button" aria-pressed={one === value} onClick={() => onPick(one)}>
          {label}
        </button>
      ))}
    </fieldset>
  );
}

/** Any number of a few, kept as their names with spaces between. */
export function SeveralField({ form, path, label, choices }: ChoiceProps) {
  const chosen = (form.texts[path] ?? '').split(' ').filter(Boolean);
  // What a file names and the list does not is shown too, so that it can be taken off.
  const strange = chosen.filter((one) => !choices.some(([name]) => name === one)).map((one) => [one, one] as const);
  const toggle = (name: string) => {
    const next = chosen.includes(name) ? chosen.filter((one) => one !== name) : [...chosen, name];
    form.put({ [path]: next.join(' ') });
  };
  return (
    <fieldset class="choice choice-tall">
      <legend>{label}</legend>
      {[...choices, ...strange].map(([name, words]) => (
        <button key={name} type="button" aria-pressed={chosen.includes(name)} onClick={() => toggle(name)}>
          {words}
        </button>
      ))}
      <Refused path={path} inside />
    </fieldset>
  );
}
