/** One field of the build card: its label, what is typed, and at once what the core refused there. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { SignKey } from '../../parts/sign-key.tsx';
import type { Form } from './form.ts';
import type { Texts } from './numbers.ts';
import { nameIn, toldAt } from './problems.ts';

interface FieldProps {
  readonly form: Form;
  /** As the core names it: `car.wheel.rimDiameter`. */
  readonly path: string;
  readonly label: ComponentChildren;
  readonly hint?: string | undefined;
  readonly onFocus?: () => void;
  /** The points of a drawing that it is about, with spaces between. */
  readonly of?: string;
}

interface RefusedProps {
  readonly path: string;
  /** What the card calls it. */
  readonly label?: ComponentChildren;
  readonly inside?: boolean;
}

const told = ({ path, label, inside }: RefusedProps) =>
  toldAt(path, nameIn(typeof label === 'string' ? label : 'it'), inside);
const isWrong = (props: RefusedProps): boolean => told(props)?.quiet === false;

/** What is not right at a path, beside its field: what is but missing says so softly until the card is to be saved. */
export function Refused(props: RefusedProps) {
  const one = told(props);
  if (!one) return null;
  if (one.quiet) return <span class="lacking">{one.message}</span>;
  return (
    <span class="wrong" role="alert">
      {one.message}
    </span>
  );
}

export function TextField({
  form,
  path,
  label,
  hint,
  onFocus,
  of,
  mode = 'text',
  signed = false,
}: FieldProps & {
  readonly mode?: 'text' | 'decimal';
  /** It may be below zero. */
  readonly signed?: boolean;
}) {
  const text = form.texts[path] ?? '';
  const put = (typed: string) => form.put({ [path]: typed });
  const field = (
    <label class="field" data-of={of}>
      <span>{label}</span>
      <input
        type="text"
        inputMode={mode}
        autocomplete="off"
        maxLength={400}
        value={text}
        aria-invalid={isWrong({ path, inside: true })}
        onFocus={onFocus}
        onInput={(event) => put(event.currentTarget.value)}
      />
      {!signed && <Below path={path} label={label} hint={hint} />}
    </label>
  );
  if (!signed) return field;
  return (
    <div class="field">
      <div class="signed-row">
        {field}
        <SignKey text={text} onChange={put} />
      </div>
      <Below path={path} label={label} hint={hint} />
    </div>
  );
}

/** What stands under a field: what helps, and what is wrong. */
function Below({ path, label, hint }: Pick<FieldProps, 'path' | 'label' | 'hint'>) {
  return (
    <>
      {hint && <span class="soft">{hint}</span>}
      <Refused path={path} label={label} inside />
    </>
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
        aria-invalid={isWrong({ path })}
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
      <Refused path={path} label={label} />
    </label>
  );
}

interface ManyProps extends Omit<FieldProps, 'path'> {
  readonly parts: readonly { readonly path: string; readonly label: string }[];
  /** What typing in one of them changes; left out: that one. */
  readonly change?: (path: string, text: string) => Texts;
  /** What they are together: a refusal of it is theirs. */
  readonly whole?: string;
  readonly mode?: 'text' | 'decimal';
  readonly class?: string;
}

/** A few numbers on one line: x y z, low aim high. */
export function NumbersField({
  form,
  label,
  hint,
  parts,
  whole,
  onFocus,
  of,
  change,
  mode = 'decimal',
  class: name = '',
}: ManyProps) {
  const [last, setLast] = useState(parts[0]);
  const sign = (turned: string) => last && form.put(change?.(last.path, turned) ?? { [last.path]: turned });
  const allWrong = whole !== undefined && isWrong({ path: whole });
  return (
    <fieldset class={`field numbers ${name}`.trim()} data-of={of}>
      <legend>{label}</legend>
      <div class="numbers-row">
        {parts.map(({ path, label: part }, i) => (
          <label key={path}>
            <span class="soft">{part}</span>
            <input
              type="text"
              inputMode={mode}
              autocomplete="off"
              maxLength={40}
              value={form.texts[path] ?? ''}
              aria-invalid={allWrong || isWrong({ path })}
              onFocus={() => {
                setLast(parts[i]);
                onFocus?.();
              }}
              onInput={({ currentTarget: { value } }) => form.put(change?.(path, value) ?? { [path]: value })}
            />
          </label>
        ))}
        <SignKey text={form.texts[last?.path ?? ''] ?? ''} onChange={sign} />
      </div>
      {hint && <span class="soft">{hint}</span>}
      {parts.map(({ path, label: part }) => (
        <Refused key={path} path={path} label={`${nameIn(String(label))}, ${part}`} />
      ))}
      {whole !== undefined && <Refused path={whole} label={label} />}
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
      <Refused path={path} label={label} inside />
    </fieldset>
  );
}
