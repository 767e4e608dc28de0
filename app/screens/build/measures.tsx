/** The measures of one side, by points or by tape, beside a drawing that rings the one being typed. */
import { useState } from 'preact/hooks';
import type { AxleName } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import type { TapeDimension } from '../../../core/suspension/tape/tape.ts';
import { suspensionPictures } from '../../parts/drawings/suspension-catalogue.ts';
import { SuspensionDrawing } from '../../parts/suspension-drawing.tsx';
import { Buttons, ChoiceField, NumbersField, Refused, TextField } from './field.tsx';
import type { Form } from './form.ts';
import { cardUnits } from './numbers.ts';
import { optionalPoints, pointsOf } from './points.ts';
import { coordinate, dimensionsOf, isByTape, PLACES } from './suspension-texts.ts';
import { asTyped, Typical } from './typical.tsx';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
  /** Of the suspension. */
  readonly path: string;
  readonly title: string;
}

export function Measures({ form, axle, path, title }: Props) {
  const kind = form.texts[`${path}.kind`] ?? '';
  const byTape = isByTape(form.texts, path);
  const [ringed, ring] = useState<readonly string[]>([]);
  return (
    <section class="measures">
      {title && <h3>{title}</h3>}
      {dimensionsOf(kind).length > 0 && (
        <Buttons
          legend="How it is measured"
          hidden
          options={[
            ['tape', 'Tape dimensions'],
            ['points', 'Points'],
          ]}
          value={byTape ? 'tape' : 'points'}
          onPick={(way) => {
            ring([]);
            form.put({ [`${path}.way`]: way });
          }}
        />
      )}
      {!byTape && <Typical form={form} axle={axle} path={path} kind={kind} />}
      <div class="build-drawing">
        <SuspensionDrawing kind={kind} highlight={ringed} points={pointsOf(form.texts, path)} />
      </div>
      <Refused path={`${path}.points`} />
      <Refused path={`${path}.tape`} />
      {byTape ? (
        <TapeFields form={form} path={`${path}.tape`} kind={kind} ring={ring} />
      ) : (
        <PointFields form={asTyped(form, axle, path, kind)} path={path} kind={kind} ring={ring} />
      )}
    </section>
  );
}

interface FieldsProps {
  readonly form: Form;
  readonly path: string;
  readonly kind: string;
  readonly ring: (points: readonly string[]) => void;
}

function PointFields({ form, path, kind, ring }: FieldsProps) {
  const labels = suspensionPictures[kind]?.labels ?? {};
  const held = suspensionKinds[kind];
  const optional = optionalPoints(held);
  // What a rigid axle has once is given with its left side.
  const ofAxle = held?.rigidAxle?.once ?? [];
  const once = path.includes('.rightSuspension') ? ofAxle : [];
  const asked = (held?.points ?? []).filter((name) => !once.includes(name));
  return (
    <>
      <p class="soft">
        In {cardUnits().length}, with all adjusters where they stand now: forward of the front axle’s middle, outboard
        of the car’s middle, up from the ground.
        {asked.some((name) => ofAxle.includes(name)) &&
          ' Of what the axle has once, such as a rod across the car, outboard is negative right of the middle.'}
      </p>
      {asked.map((name) => (
        <NumbersField
          key={name}
          form={form}
          label={`${labels[name] ?? name}${optional.includes(name) ? ' (if any)' : ''}`}
          parts={['forward', 'outboard', 'up'].map((label, i) => ({
            label,
            path: coordinate(path, name, PLACES[i] ?? 0),
          }))}
          whole={`${path}.points.${name}`}
          onFocus={() => ring([name])}
        />
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

function TapeFields({ form, path, kind, ring }: FieldsProps) {
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
          ['', 'behind the axle, as on most'],
          ['behind', 'behind the axle'],
          ['ahead', 'ahead of the axle'],
        ]}
        onFocus={() => ring(['tieOuter'])}
      />
      {dimensionsOf(kind).map((dimension) => (
        <TextField
          key={dimension.name}
          form={form}
          path={`${path}.${dimension.name}`}
          label={`${dimension.label}${dimension.unit === 'degrees' ? ', degrees' : ''}`}
          hint={emptyHint(dimension, dimensionsOf(kind))}
          mode="decimal"
          onFocus={() => ring(dimension.between)}
        />
      ))}
    </>
  );
}

/** What follows from other dimensions has no name of its own: the reason says it. */
function emptyHint({ otherwise, unit, why }: TapeDimension, all: readonly TapeDimension[]): string {
  if (otherwise === undefined) return why;
  const alike = all.find(({ name }) => name === otherwise);
  if (alike) return `left empty: as ${alike.label.charAt(0).toLowerCase()}${alike.label.slice(1)} (${why})`;
  return `left empty: ${typeof otherwise === 'number' ? `${otherwise} ${unit} (${why})` : why}`;
}
