/** Where an adjuster stands, typed in the parts in which it is said: what can be read is taken at once. */
import { useState } from 'preact/hooks';
import type { Adjuster, Position } from '../../../core/contract.ts';
import { SignKey } from '../../parts/sign-key.tsx';
import { units } from '../../state/preferences.ts';
import { placeParts, typedPlace } from '../../state/typed-place.ts';
import { words } from '../../state/words.ts';

interface Props {
  readonly adjuster: Adjuster;
  readonly position: Position;
  readonly onChange: (position: Position) => void;
}

export function TypedPlace({ adjuster, position, onChange }: Props) {
  // As typed, while it is that position: a step or a touch elsewhere writes it anew.
  const [typed, setTyped] = useState<{ readonly texts: readonly string[]; readonly of: Position }>();
  const parts = placeParts(adjuster, position);
  const texts = typed?.of === position ? typed.texts : parts.map(({ text }) => text);
  const read = typedPlace(adjuster, texts);
  const put = (i: number, text: string) => {
    const next = texts.map((one, at) => (at === i ? text : one));
    const now = typedPlace(adjuster, next);
    const known = 'position' in now;
    setTyped({ texts: next, of: known ? now.position : position });
    if (known) onChange(now.position);
  };
  return (
    <fieldset class="numbers stepper-typed">
      <legend class="visually-hidden">Where it stands</legend>
      <div class="numbers-row">
        {parts.map(({ label, mode, signed }, i) => (
          <div key={label} class="signed-row">
            <label>
              <span class="soft">{label}</span>
              <input
                type="text"
                inputMode={mode}
                autocomplete="off"
                maxLength={40}
                value={texts[i] ?? ''}
                aria-invalid={!('position' in read)}
                onInput={(event) => put(i, event.currentTarget.value)}
              />
            </label>
            {signed && <SignKey text={texts[i] ?? ''} onChange={(text) => put(i, text)} />}
          </div>
        ))}
      </div>
      {!('position' in read) && (
        <p class="wrong" role="alert">
          {words.refusal({ value: texts.join(' '), rule: read }, undefined, units.value)}
        </p>
      )}
    </fieldset>
  );
}
