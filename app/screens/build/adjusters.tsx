/**
 * The adjusters of one axle: chosen by drawing, one open at a time, each with what a step of it does. One list for both
 * sides, or one a side.
 */
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { misfit } from '../../../core/adjuster/fits.ts';
import { MOST_ADJUSTERS } from '../../../core/adjuster/of-corner.ts';
import { wholeAdjuster } from '../../../core/adjuster/whole.ts';
import type { Adjuster, AxleName, Corner } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { adjusterPictures } from '../../parts/drawings/catalogue.ts';
import { AdjusterAsk } from './adjuster-ask.tsx';
import { adjusterFrom, chosenWay, fieldsOf, usualPath, wayPath, waysOf } from './adjuster-fields.ts';
import { hasOwnList, indices, type List, ownListPath } from './car-texts.ts';
import { type AxleEffects, StepEffects, useEffects } from './effects.tsx';
import { Buttons, Refused } from './field.tsx';
import type { Form } from './form.ts';
import { lookedAt } from './looked-at.ts';
import { copyOf, newAdjuster, rightList, withoutAdjuster } from './new-adjuster.ts';
import { cardUnits } from './numbers.ts';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
}

interface ListProps extends Props {
  readonly list: List;
}

export function AdjustersSection({ form, axle }: Props) {
  const own = hasOwnList(form.texts, axle);
  return (
    <>
      {own && <h3 class="side-head">Left side</h3>}
      <AdjusterList key="adjusters" form={form} axle={axle} list="adjusters" />
      <RightSide form={form} axle={axle} />
      {own && (
        <>
          <h3 class="side-head">Right side</h3>
          <p class="soft">
            Mirrored: outboard is away from the car’s middle, and which way a cam turns is typed as it would be on the
            left wheel. The hand of a thread is typed as it is.
          </p>
          <AdjusterList key="rightAdjusters" form={form} axle={axle} list="rightAdjusters" />
        </>
      )}
    </>
  );
}

/** Whether the right side has a list of its own: it begins as a copy of the left one, and goes at one touch. */
function RightSide({ form, axle }: Props) {
  const own = hasOwnList(form.texts, axle);
  const pick = (value: string) => {
    if ((value === 'own') === own) return;
    const texts = { ...(value === 'own' ? rightList(form.texts, axle) : {}), [ownListPath(axle)]: value };
    const says =
      value === 'own' ? 'The left side’s adjusters copied to the right' : 'The right side’s own adjusters taken off';
    form.fill(texts, [`car.${axle}.rightAdjusters`, ownListPath(axle)], says);
  };
  return (
    <Buttons
      legend="Adjusters on the right side"
      options={[
        ['', 'are the mirror image'],
        ['own', 'differ'],
      ]}
      value={own ? 'own' : ''}
      onPick={pick}
    />
  );
}

function AdjusterList({ form, axle, list }: ListProps) {
  const path = `car.${axle}.${list}`;
  const all = indices(form.texts, path);
  const effects = useEffects(form, axle, list);
  return (
    <>
      {all.map((i) => (
        <AdjusterForm
          key={form.texts[`${path}[${i}].id`] ?? i}
          form={form}
          axle={axle}
          list={list}
          index={i}
          effects={effects}
        />
      ))}
      {list === 'rightAdjusters' && all.length === 0 && <p>No adjusters on this side.</p>}
      <Refused path={path} />
      <AddAdjuster form={form} axle={axle} list={list} />
    </>
  );
}

/** Only what fits this suspension is offered. */
function AddAdjuster({ form, axle, list }: ListProps) {
  const path = `car.${axle}.${list}`;
  const held = suspensionKinds[form.texts[`car.${axle}.suspension.kind`] ?? ''];
  if (!held) return <p class="soft">Choose the suspension first.</p>;
  if (indices(form.texts, path).length >= MOST_ADJUSTERS) {
    return <p class="soft">There is room for {MOST_ADJUSTERS} adjusters a corner: take one off to add another.</p>;
  }
  const add = (kind: string, name: string) => {
    const index = indices(form.texts, path).length;
    form.put({ ...newAdjuster(kind, name, path, index, form.texts), [OPEN]: `${path}[${index}]` });
    requestAnimationFrame(() => document.querySelector('.adjuster-open')?.scrollIntoView({ block: 'start' }));
  };
  return (
    <fieldset class="kinds">
      <legend>Add an adjuster{hasOwnList(form.texts, axle) ? ` on the ${sideOf(list)}` : ''}</legend>
      {Object.values(adjusterKinds)
        .filter((kind) => !misfit(kind, held))
        .map(({ kind, name }) => (
          <button key={kind} type="button" class="kind" aria-label={name} onClick={() => add(kind, name)}>
            <Picture kind={kind} />
            {name}
          </button>
        ))}
    </fieldset>
  );
}

/** The adjuster that is open, by its path. */
const OPEN = '@adjuster';
const OTHER = { adjusters: 'rightAdjusters', rightAdjusters: 'adjusters' } as const satisfies Record<List, List>;
const sideOf = (list: List): string => (list === 'rightAdjusters' ? 'right' : 'left');

function AdjusterForm({
  form,
  axle,
  list,
  index,
  effects,
}: ListProps & { readonly index: number; readonly effects: AxleEffects }) {
  const all = `car.${axle}.${list}`;
  const path = `${all}[${index}]`;
  const kind = form.texts[`${path}.kind`] ?? '';
  const open = form.texts[OPEN] === path;
  const takeOff = () =>
    form.fill(withoutAdjuster(form.texts, all, index), [all], `${form.texts[`${path}.name`] ?? kind} taken off`);
  const copyTo = (side: List) => {
    const to = `car.${axle}.${side}`;
    const count = indices(form.texts, to).length;
    if (count >= MOST_ADJUSTERS) return;
    const before = Object.fromEntries(Object.entries(form.texts).filter(([key]) => key.startsWith(`${to}[`)));
    form.fill({ ...before, ...copyOf(form.texts, path, to) }, [to], `${form.texts[`${path}.name`] ?? kind} copied`);
    form.put({ [OPEN]: `${to}[${count}]` });
    requestAnimationFrame(() => document.querySelector('.adjuster-open')?.scrollIntoView({ block: 'start' }));
  };
  return (
    <section class={`adjuster-form${open ? ' adjuster-open' : ''}`}>
      <h3>
        <button
          type="button"
          class="adjuster-head"
          aria-expanded={open}
          onClick={() => form.put({ [OPEN]: open ? '' : path })}
        >
          {form.texts[`${path}.name`] || adjusterKinds[kind]?.name}
          <span class="soft">{open ? 'close' : 'open'}</span>
        </button>
      </h3>
      {open && (
        <Picture kind={kind} typed={adjusterFrom(form.texts, path)} corner={list === 'rightAdjusters' ? 'RF' : 'LF'} />
      )}
      <StepEffects effects={effects} adjuster={{ id: form.texts[`${path}.id`] ?? '', kind }} />
      {open && (
        <>
          <Refused path={`${path}.kind`} />
          {form.texts[usualPath(path)] === 'yes' && (
            <p class="plan-note" role="status">
              How far it moves is what most have, not looked up for this car: the plan counts that. Typed, it is yours.
            </p>
          )}
          <Way form={form} path={path} kind={kind} />
          {fieldsOf(form.texts, path).map((field) => (
            <AdjusterAsk
              key={field.name}
              form={lookedAt(form, path)}
              axle={axle}
              path={`${path}.${field.name}`}
              field={field}
            />
          ))}
          <Refused path={`${path}.id`} />
          <div class="pair">
            <button type="button" class="quiet" onClick={() => copyTo(list)}>
              Copy it
            </button>
            {hasOwnList(form.texts, axle) && (
              <button type="button" class="quiet" onClick={() => copyTo(OTHER[list])}>
                Copy it to the {sideOf(OTHER[list])}
              </button>
            )}
          </div>
          <button type="button" class="quiet wide" onClick={takeOff}>
            Take it off the car
          </button>
        </>
      )}
      <Refused path={path} />
    </section>
  );
}

/** Asked only where the kind has more ways than one of saying what it does. */
function Way({ form, path, kind }: { readonly form: Form; readonly path: string; readonly kind: string }) {
  const ways = waysOf(kind);
  if (ways.length === 0) return null;
  return (
    <Buttons
      legend="What is known of it"
      options={ways.map((way) => [way, way] as const)}
      value={chosenWay(form.texts, path) ?? ''}
      onPick={(way) => form.put({ [wayPath(path)]: way })}
    />
  );
}

interface PictureProps {
  readonly kind: string;
  readonly typed?: Readonly<Record<string, unknown>>;
  readonly corner?: Corner;
}

/** The adjuster as it is typed, going one step; a made-up one of its kind until it is whole. */
function Picture({ kind, typed = {}, corner = 'LF' }: PictureProps) {
  const picture = adjusterPictures[kind];
  const own = adjusterKinds[kind];
  if (!picture || !own) return null;
  const whole = wholeAdjuster(typed);
  const { from, to } = whole ? own.step(whole) : own.sample;
  const shown = whole ?? ({ ...own.sample.adjuster, id: 'sample', kind } as unknown as Adjuster);
  return <picture.Picture adjuster={shown} from={from} to={to} corner={corner} units={cardUnits()} />;
}
