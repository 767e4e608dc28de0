/** What a step asks: figures on a line, each told beside it why it will not do; and a choice of a few. */
import { useState } from 'preact/hooks';
import { InputError } from '../../../core/input-error.ts';
import { lengthUnit } from '../../../core/units/shop.ts';
import { words } from '../../state/words.ts';
import type { Ask, At, Pick } from './tool.ts';

/** Why a figure will not do: what core said of it, else that it is no figure. */
function wrongOf(at: At, ask: Ask, refused: InputError | undefined): string | undefined {
  const told = ({ rule }: InputError, value: unknown) =>
    words.refusal({ field: 'figure', value, rule }, { asked: () => ask.label }, at.units);
  try {
    at.read(ask);
  } catch (error) {
    if (error instanceof InputError) return told(error, at.texts[ask.id]);
    throw error;
  }
  return refused?.field === ask.id ? told(refused, refused.value) : undefined;
}

/** On to the next box by the keyboard's own key, so that the thumb stays there. */
function onward(event: KeyboardEvent): void {
  if (event.key !== 'Enter' || !(event.currentTarget instanceof HTMLInputElement)) return;
  const all = [...document.querySelectorAll<HTMLInputElement>('.bench-row input')];
  const next = all[all.indexOf(event.currentTarget) + 1];
  if (next) next.focus();
  else event.currentTarget.blur();
}

interface RowProps {
  readonly at: At;
  readonly asks: readonly Ask[];
  readonly refused: InputError | undefined;
}

export function Row({ at, asks, refused }: RowProps) {
  const [last, setLast] = useState<string | undefined>();
  const signed = asks.filter((ask) => ask.signed);
  const sign = () => {
    const id = signed.find((ask) => ask.id === last)?.id ?? signed[0]?.id ?? '';
    const text = at.texts[id] ?? '';
    at.put({ [id]: /^[−-]/.test(text) ? text.slice(1) : `−${text}` });
  };
  const wrong = asks.flatMap((ask) => wrongOf(at, ask, refused) ?? []);
  return (
    <>
      <div class="numbers-row bench-row">
        {asks.map((ask) => (
          <label key={ask.id}>
            <span class="soft">
              {ask.label}
              {ask.is === 'length' && `, ${lengthUnit(at.units)}`}
            </span>
            <input
              type="text"
              inputMode="decimal"
              autocomplete="off"
              enterKeyHint="next"
              maxLength={40}
              placeholder={ask.else}
              value={at.texts[ask.id] ?? ''}
              aria-invalid={wrongOf(at, ask, refused) !== undefined}
              onFocus={() => setLast(ask.id)}
              onKeyDown={onward}
              onInput={(event) => at.put({ [ask.id]: event.currentTarget.value })}
            />
          </label>
        ))}
        {signed.length > 0 && (
          <button
            type="button"
            class="sign-key"
            aria-label="Change the sign"
            onPointerDown={(event) => event.preventDefault()}
            onClick={sign}
          >
            ±
          </button>
        )}
      </div>
      {wrong.map((text) => (
        <p key={text} class="wrong" role="alert">
          {text}
        </p>
      ))}
    </>
  );
}

export function Choice({ at, pick: { id, legend, of } }: { readonly at: At; readonly pick: Pick }) {
  const value = of.find(([one]) => one === at.texts[id])?.[0] ?? of[0]?.[0];
  return (
    <fieldset class={of.length > 3 ? 'choice choice-tall' : 'choice'}>
      <legend class="visually-hidden">{legend}</legend>
      {of.map(([one, name]) => (
        <button key={one} type="button" aria-pressed={one === value} onClick={() => at.put({ [id]: one })}>
          {name}
        </button>
      ))}
    </fieldset>
  );
}
