/** The suspension of one axle: its kind by drawing, then points or tape dimensions, the one being typed ringed. */
import { useState } from 'preact/hooks';
import type { AxleName, Vec3 } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import type { TapeDimension } from '../../../core/suspension/tape.ts';
import { suspensionPictures } from '../../parts/drawings/suspension-catalogue.ts';
import { SuspensionDrawing } from '../../parts/suspension-drawing.tsx';
import { dimensionsOf } from './car-texts.ts';
import { ChoiceField, NumbersField, Refused, TextField } from './field.tsx';
import type { Form } from './form.ts';
import { cardUnits, lengthOf, lengthText } from './numbers.ts';
import { dimensionName, dimensionPoints } from './tape-names.ts';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
}

export function SuspensionSection({ form, axle }: Props) {
  const path = `car.${axle}.suspension`;
  const kind = form.texts[`${path}.kind`] ?? '';
  const taped = dimensionsOf(kind).length > 0;
  const byTape = taped && form.texts[`${path}.way`] === 'tape';
  const [ringed, ring] = useState<readonly string[]>([]);
  return (
    <>
      <KindChoice form={form} path={path} />
      <Refused path={path} />
      {taped && (
        <fieldset class="choice">
          <legend class="visually-hidden">How it is measured</legend>
          {(
            [
              ['tape', 'Tape dimensions'],
              ['points', 'Points'],
            ] as const
          ).map(([way, label]) => (
            <button
              key={way}
              type="button"
              aria-pressed={(form.texts[`${path}.way`] ?? 'points') === way}
              onClick={() => form.put({ [`${path}.way`]: way })}
            >
              {label}
            </button>
          ))}
        </fieldset>
      )}
      <div class="build-drawing">
        <SuspensionDrawing kind={kind} highlight={ringed} points={byTape ? {} : pointsOf(form, path, kind)} />
      </div>
      {byTape ? (
        <TapeFields form={form} path={`${path}.tape`} kind={kind} ring={ring} />
      ) : (
        <PointFields form={form} path={path} kind={kind} ring={ring} />
      )}
    </>
  );
}

function KindChoice({ form, path }: { readonly form: Form; readonly path: string }) {
  return (
    <fieldset class="kinds">
      <legend class="visually-hidden">Kind of suspension</legend>
      {Object.values(suspensionKinds).map(({ kind, name }) => (
        <button
          key={kind}
          type="button"
          class="kind"
          aria-pressed={form.texts[`${path}.kind`] === kind}
          onClick={() => form.put({ [`${path}.kind`]: kind })}
        >
          <SuspensionDrawing kind={kind} />
          {name}
        </button>
      ))}
    </fieldset>
  );
}

function pointsOf(form: Form, path: string, kind: string): Record<string, Vec3> {
  const names = suspensionKinds[kind]?.points ?? [];
  const found = names.map((name) => [name, [0, 1, 2].map((i) => lengthOf(form.texts[`${path}.points.${name}[${i}]`]))]);
  return Object.fromEntries(found.filter(([, point]) => (point as unknown[]).every((x) => typeof x === 'number')));
}

interface FieldsProps {
  readonly form: Form;
  readonly path: string;
  readonly ring: (points: readonly string[]) => void;
}

function PointFields({ form, path, kind, ring }: FieldsProps & { readonly kind: string }) {
  const labels = suspensionPictures[kind]?.labels ?? {};
  if (suspensionKinds[kind]?.points.length === 0) {
    return <p class="soft">No dimensions: each adjuster brings its effect with it, from the kit’s chart.</p>;
  }
  return (
    <>
      <Typical form={form} path={path} kind={kind} />
      <p class="soft">
        In {cardUnits().length}, with all adjusters where the dimensions were taken: forward of the front axle’s middle,
        outboard of the car’s middle, up from the ground.
      </p>
      {(suspensionKinds[kind]?.points ?? []).map((name) => (
        <div key={name}>
          <NumbersField
            form={form}
            label={labels[name] ?? name}
            parts={['forward', 'outboard', 'up'].map((label, i) => ({ label, path: `${path}.points.${name}[${i}]` }))}
            onFocus={() => ring([name])}
          />
          <Refused path={`${path}.points.${name}`} />
        </div>
      ))}
      <NumbersField
        form={form}
        label="Wheel angles when the points were taken, degrees"
        parts={[
          { label: 'camber', path: `${path}.camber` },
          { label: 'toe', path: `${path}.toe` },
        ]}
        onFocus={() => ring(['wheelCentre'])}
      />
      <TextField
        form={form}
        path={`${path}.tolerance`}
        label={`How well the points are known, ± ${cardUnits().length}`}
        hint="left empty: ± 5 mm, a tape’s"
        mode="decimal"
      />
    </>
  );
}

/** How far a rear axle stands behind the front one, and how well a typical corner is known, mm. */
const WHEELBASE = 2600;
const TYPICAL_TOLERANCE = 25;

/** The made-up corner of the drawing as a start: nobody's car, for a first plan until there are measures. */
function Typical({ form, path, kind }: Omit<FieldsProps, 'ring'> & { readonly kind: string }) {
  const behind = path.includes('.rear.') ? WHEELBASE : 0;
  const texts = Object.fromEntries(
    Object.entries(suspensionPictures[kind]?.points ?? {}).flatMap(([name, [x, y, z]]) =>
      [x - behind, y, z].map((value, i) => [`${path}.points.${name}[${i}]`, lengthText(value)]),
    ),
  );
  const taken = Object.entries(texts).every(([key, text]) => form.texts[key] === text);
  if (taken) {
    return (
      <p class="plan-note" role="status">
        Typical figures, not any maker’s and not this car’s: measure your own. Until then every prediction is rough.
      </p>
    );
  }
  const rest = { [`${path}.camber`]: '0', [`${path}.toe`]: '0', [`${path}.tolerance`]: lengthText(TYPICAL_TOLERANCE) };
  return (
    <button type="button" class="quiet wide" onClick={() => form.put({ ...texts, ...rest })}>
      Start from a typical layout
    </button>
  );
}

function TapeFields({ form, path, kind, ring }: FieldsProps & { readonly kind: string }) {
  return (
    <>
      <p class="soft">
        Angles as measured with the adjusters where they stand; lengths in {cardUnits().length}. What is left empty is
        taken from a usual car and counts as less well known.
      </p>
      <ChoiceField
        form={form}
        path={`${path}.tie`}
        label="Steering arm"
        choices={[
          ['behind', 'behind the axle'],
          ['ahead', 'ahead of the axle'],
        ]}
      />
      {dimensionsOf(kind).map((dimension) => (
        <TextField
          key={dimension.name}
          form={form}
          path={`${path}.${dimension.name}`}
          label={`${dimensionName(dimension.name)}${dimension.unit === 'degrees' ? ', degrees' : ''}`}
          hint={emptyHint(dimension)}
          mode="decimal"
          onFocus={() => ring(dimensionPoints(dimension.name))}
        />
      ))}
    </>
  );
}

function emptyHint({ otherwise, unit, why }: TapeDimension): string {
  if (otherwise === undefined) return why;
  const taken = typeof otherwise === 'number' ? `${otherwise} ${unit}` : `as ${dimensionName(otherwise).toLowerCase()}`;
  return `left empty: ${taken} (${why})`;
}
