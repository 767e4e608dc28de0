/** The suspension of one axle: its kind by drawing, whether it steers, its measures, and a right side of its own. */
import { useState } from 'preact/hooks';
import type { AxleName } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { SuspensionDrawing } from '../../parts/suspension-drawing.tsx';
import { hasOwnRight, isSteered } from './car-texts.ts';
import { Buttons, Refused } from './field.tsx';
import type { Form } from './form.ts';
import { Measures } from './measures.tsx';
import type { Texts } from './numbers.ts';
import { StartNote } from './start-note.tsx';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
}

export function SuspensionSection({ form, axle }: Props) {
  const path = `car.${axle}.suspension`;
  const kind = suspensionKinds[form.texts[`${path}.kind`] ?? ''];
  const own = hasOwnRight(form.texts, axle);
  const steered = isSteered(form.texts, axle) ? 'yes' : 'no';
  return (
    <>
      <StartNote form={form} axle={axle} />
      <KindChoice form={form} axle={axle} />
      <Refused path={path} />
      <Refused path={`${path}.kind`} />
      <Buttons
        legend={`The ${axle} wheels`}
        options={[
          ['yes', 'steer'],
          ['no', 'do not steer'],
        ]}
        value={steered}
        onPick={(value) => form.put({ [`car.${axle}.steered`]: value })}
      />
      {kind?.points.length === 0 ? (
        <>
          <SuspensionDrawing kind={kind.kind} />
          <p class="soft">
            I have the kit’s chart: no dimensions are needed. Each adjuster brings its effect with it; add them under
            the {axle} adjusters and type what the chart says.
          </p>
        </>
      ) : (
        <>
          <Measures key={path} form={form} axle={axle} path={path} title={own ? 'Left side' : ''} />
          <Buttons
            legend="The right side"
            options={[
              ['', 'is the mirror image'],
              ['own', 'differs'],
            ]}
            value={own ? 'own' : ''}
            onPick={(value) => form.put({ ...rightStart(form.texts, axle, value), [`car.${axle}.right`]: value })}
          />
          {own && (
            <Measures
              key="right"
              form={form}
              axle={axle}
              path={`car.${axle}.rightSuspension`}
              title="Right side, mirrored: outboard is away from the car’s middle"
            />
          )}
        </>
      )}
    </>
  );
}

/** A right side that was never typed begins as the left one stands. */
function rightStart(texts: Texts, axle: AxleName, value: string): Texts {
  const left = `car.${axle}.suspension.`;
  const right = `car.${axle}.rightSuspension.`;
  if (value !== 'own' || Object.keys(texts).some((key) => key.startsWith(right))) return {};
  const once = suspensionKinds[texts[`${left}kind`] ?? '']?.rigidAxle?.once ?? [];
  const own = Object.entries(texts).filter(
    ([key]) => key.startsWith(left) && !once.some((name) => key.startsWith(`${left}points.${name}[`)),
  );
  return Object.fromEntries(own.map(([key, text]) => [right + key.slice(left.length), text]));
}

/** All drawings while nothing is measured; after that one button, so that the measures are near. */
function KindChoice({ form, axle }: Props) {
  const path = `car.${axle}.suspension`;
  const chosen = form.texts[`${path}.kind`] ?? '';
  const measured = Object.keys(form.texts).some(
    (key) => /\.(points|tape)\./.test(key) && key.startsWith(path) && form.texts[key] !== '',
  );
  const [open, setOpen] = useState(!measured);
  if (!open) {
    return (
      <button type="button" class="quiet wide" onClick={() => setOpen(true)}>
        {suspensionKinds[chosen]?.name ?? 'Kind'}: change the kind
      </button>
    );
  }
  const pick = (kind: string) => {
    const right = `car.${axle}.rightSuspension.kind`;
    form.put({ [`${path}.kind`]: kind, ...(form.texts[right] === chosen ? { [right]: kind } : {}) });
    setOpen(false);
  };
  return (
    <fieldset class="kinds">
      <legend class="visually-hidden">Kind of suspension</legend>
      {Object.values(suspensionKinds).map(({ kind, name }) => (
        <button
          key={kind}
          type="button"
          class="kind"
          aria-label={name}
          aria-pressed={chosen === kind}
          onClick={() => pick(kind)}
        >
          <SuspensionDrawing kind={kind} />
          {name}
        </button>
      ))}
    </fieldset>
  );
}
