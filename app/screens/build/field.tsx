/** One field of the build card: its label, what is typed, and at once what the core refused there. */
import type { ComponentChildren } from 'preact';
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

/** The refusal of a path: its own, or of something inside it that has no field. */
export function refusedAt(path: string): string | undefined {
  const error = refusal.value;
  if (!error || error.field !== path) return undefined;
  return `${error.value === undefined ? 'Nothing here' : JSON.stringify(error.value)}; allowed: ${error.allowed}`;
}

export function Refused({ path }: { readonly path: string }) {
  const message = refusedAt(path);
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
        aria-invalid={refusedAt(path) !== undefined}
        onFocus={onFocus}
        onInput={(event) => form.put({ [path]: event.currentTarget.value })}
      />
      {hint && <span class="soft">{hint}</span>}
      <Refused path={path} />
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
}

/** A few numbers on one line: x y z, low aim high. */
export function NumbersField({ form, label, hint, parts, onFocus }: ManyProps) {
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
              aria-invalid={refusedAt(path) !== undefined}
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
    </fieldset>
  );
}
