/** The measures of one side, by points or by tape, beside a drawing that rings the one being typed. */
import { useRef, useState } from 'preact/hooks';
import type { AxleName } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { TAPE_TOLERANCE, type TapeDimension } from '../../../core/suspension/tape/tape.ts';
import { aboutLength, inShop, partAngle } from '../../../core/units/shop.ts';
import { SuspensionDrawing } from '../../parts/suspension-drawing.tsx';
import { words } from '../../state/words.ts';
import { Buttons, ChoiceField, NumbersField, Refused, TextField } from './field.tsx';
import type { Form } from './form.ts';
import { cardUnits, unitWord } from './numbers.ts';
import { optionalPoints, pointsOf } from './points.ts';
import {
  BEHIND,
  behindPath,
  coordinate,
  dimensionsOf,
  isByTape,
  isHubPlace,
  isUsual,
  PLACES,
} from './suspension-texts.ts';

import { asTyped, Typical } from './typical.tsx';
import { Worth } from './worth.tsx';

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
  const own = useRef<HTMLElement>(null);
  const pick = (point: string) => {
    const fields = [...(own.current?.querySelectorAll<HTMLElement>('[data-of]') ?? [])].filter((field) =>
      field.dataset.of?.split(' ').includes(point),
    );
    // Of a point between several lengths the next one at each tap.
    const now = fields.findIndex((field) => field.contains(document.activeElement));
    fields[(now + 1) % fields.length]?.querySelector<HTMLElement>('input, select')?.focus();
  };
  return (
    <section class="measures" ref={own} onFocusIn={inSight}>
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
      {!path.includes('.rightSuspension') && isUsual(form.texts, path) && (
        <Worth form={form} axle={axle} path={path} kind={kind} />
      )}
      <div class="build-drawing">
        <SuspensionDrawing kind={kind} highlight={ringed} points={pointsOf(form.texts, path)} onPick={pick} />
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

/** What is typed into comes beneath the drawing that stays above it, and over the keyboard, as soon as that is up. */
function inSight({ target }: Event): void {
  const field = target instanceof HTMLInputElement && target.closest('.field');
  if (!field) return;
  const show = () => innerHeight <= SHORT && field.scrollIntoView({ block: 'start' });
  show();
  addEventListener('resize', show, { once: true });
}
/** px of a page that a keyboard covers half of. */
const SHORT = 520;

interface FieldsProps {
  readonly form: Form;
  readonly path: string;
  readonly kind: string;
  readonly ring: (points: readonly string[]) => void;
}

function PointFields({ form, path, kind, ring }: FieldsProps) {
  const held = suspensionKinds[kind];
  const optional = optionalPoints(held);
  // What a rigid axle has once is given with its left side.
  const ofAxle = held?.rigidAxle?.once ?? [];
  const once = path.includes('.rightSuspension') ? ofAxle : [];
  const asked = (held?.points ?? []).filter((name) => !once.includes(name));
  return (
    <>
      <p class="soft">
        In {cardUnits().length}, with all adjusters where they stand now: forward of{' '}
        {form.texts[behindPath(path)] ? 'this wheel’s own hub' : 'the front axle’s middle'}, outboard of the car’s
        middle, up from the ground.
        {asked.some((name) => ofAxle.includes(name)) &&
          ' Of what the axle has once, such as a rod across the car, outboard is negative right of the middle.'}
      </p>
      {asked.map((name) => (
        <NumbersField
          key={name}
          form={form}
          label={`${words.point(name)}${optional.includes(name) ? ' (if any)' : ''}`}
          parts={['forward', 'outboard', 'up'].flatMap((label, i) =>
            isHubPlace(form.texts, path, name, i) ? [] : [{ label, path: coordinate(path, name, PLACES[i] ?? 0) }],
          )}
          whole={`${path}.points.${name}`}
          of={name}
          onFocus={() => ring([name])}
        />
      ))}
      <NumbersField
        form={form}
        label={`Wheel angles when the points were taken${unitWord('degrees') && ', degrees'}`}
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
        hint={`left empty: ± ${aboutTape()}, a tape’s`}
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
      {suspensionKinds[kind]?.points.includes('tieOuter') && (
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
      )}
      {dimensionsOf(kind)
        .filter(({ name }) => name !== BEHIND)
        .map((dimension) => (
          <TextField
            key={dimension.name}
            form={form}
            path={`${path}.${dimension.name}`}
            label={`${dimension.label}${dimension.unit === 'degrees' && unitWord('degrees') ? ', degrees' : ''}`}
            hint={emptyHint(dimension, dimensionsOf(kind))}
            mode="decimal"
            signed={dimension.low < 0}
            of={dimension.between.join(' ')}
            onFocus={() => ring(dimension.between)}
          />
        ))}
    </>
  );
}

const usual = (value: number, unit: TapeDimension['unit']): string =>
  unit === 'mm' ? aboutLength(value, 0, cardUnits()) : partAngle(value, cardUnits());
const aboutTape = (): string => inShop(`{${TAPE_TOLERANCE} mm}`, cardUnits());

/** What follows from other dimensions has no name of its own: the reason says it. */
function emptyHint({ otherwise, unit, why: reason }: TapeDimension, all: readonly TapeDimension[]): string {
  const why = inShop(reason, cardUnits());
  if (otherwise === undefined) return why;
  const alike = all.find(({ name }) => name === otherwise);
  if (alike) return `left empty: as ${alike.label.charAt(0).toLowerCase()}${alike.label.slice(1)} (${why})`;
  return `left empty: ${typeof otherwise === 'number' ? `${usual(otherwise, unit)} (${why})` : why}`;
}
