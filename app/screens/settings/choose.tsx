/** One choice of a few, each a button. */
interface Props<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [value: T, label: string])[];
  readonly onChoose: (value: T) => void;
}

export function Choose<T extends string>({ label, value, choices, onChoose }: Props<T>) {
  return (
    <fieldset class={choices.length > 3 ? 'choice choice-tall' : 'choice'}>
      <legend>{label}</legend>
      {choices.map(([one, name]) => (
        <button key={one} type="button" aria-pressed={one === value} onClick={() => onChoose(one)}>
          {name}
        </button>
      ))}
    </fieldset>
  );
}
