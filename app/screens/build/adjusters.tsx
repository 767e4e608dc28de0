/** The adjusters of one axle: chosen by drawing, one open at a time, each with what a step of it does. */
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { misfit } from '../../../core/adjuster/fits.ts';
import { wholeAdjuster } from '../../../core/adjuster/whole.ts';
import type { Adjuster, AxleName } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { adjusterPictures } from '../../parts/drawings/catalogue.ts';
import { AdjusterAsk } from './adjuster-ask.tsx';
import { adjusterFrom, chosenWay, fieldsOf, wayPath, waysOf } from './adjuster-fields.ts';
import { indices } from './car-texts.ts';
import { type AxleEffects, StepEffects, useEffects } from './effects.tsx';
import { Buttons, Refused } from './field.tsx';
import { type Form, refusedField } from './form.ts';
import { newAdjuster, withoutAdjuster } from './new-adjuster.ts';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
}

export function AdjustersSection({ form, axle }: Props) {
  const path = `car.${axle}.adjusters`;
  const all = indices(form.texts, path);
  const effects = useEffects(form, axle);
  return (
    <>
      {all.map((i) => (
        <AdjusterForm key={form.texts[`${path}[${i}].id`] ?? i} form={form} axle={axle} index={i} effects={effects} />
      ))}
      <Refused path={path} />
      <AddAdjuster form={form} axle={axle} />
    </>
  );
}

/** Only what fits this suspension is offered. */
function AddAdjuster({ form, axle }: Props) {
  const path = `car.${axle}.adjusters`;
  const held = suspensionKinds[form.texts[`car.${axle}.suspension.kind`] ?? ''];
  if (!held) return <p class="soft">Choose the suspension first.</p>;
  const add = (kind: string, name: string) => {
    const index = indices(form.texts, path).length;
    form.put({ ...newAdjuster(kind, name, path, index, form.texts), [openKey(axle)]: String(index) });
    requestAnimationFrame(() => document.querySelector('.adjuster-open')?.scrollIntoView({ block: 'start' }));
  };
  return (
    <fieldset class="kinds">
      <legend>Add an adjuster</legend>
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

const openKey = (axle: AxleName): string => `@adjuster ${axle}`;

function AdjusterForm({
  form,
  axle,
  index,
  effects,
}: Props & { readonly index: number; readonly effects: AxleEffects }) {
  const all = `car.${axle}.adjusters`;
  const path = `${all}[${index}]`;
  const kind = form.texts[`${path}.kind`] ?? '';
  const open = form.texts[openKey(axle)] === String(index) || (refusedField()?.startsWith(`${path}.`) ?? false);
  const takeOff = () =>
    form.fill(withoutAdjuster(form.texts, all, index), [all], `${form.texts[`${path}.name`] ?? kind} taken off`);
  return (
    <section class={`adjuster-form${open ? ' adjuster-open' : ''}`}>
      <h3>
        <button
          type="button"
          class="adjuster-head"
          aria-expanded={open}
          onClick={() => form.put({ [openKey(axle)]: open ? '' : String(index) })}
        >
          {form.texts[`${path}.name`] || adjusterKinds[kind]?.name}
          <span class="soft">{open ? 'close' : 'open'}</span>
        </button>
      </h3>
      {open && <Picture kind={kind} typed={adjusterFrom(form.texts, path)} />}
      <StepEffects effects={effects} adjuster={{ id: form.texts[`${path}.id`] ?? '', kind }} />
      {open && (
        <>
          <Refused path={`${path}.kind`} />
          <Way form={form} path={path} kind={kind} />
          {fieldsOf(form.texts, path).map((field) => (
            <AdjusterAsk key={field.name} form={form} axle={axle} path={`${path}.${field.name}`} field={field} />
          ))}
          <Refused path={`${path}.id`} />
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

/** The adjuster as it is typed, going one step; a made-up one of its kind until it is whole. */
function Picture({ kind, typed = {} }: { readonly kind: string; readonly typed?: Readonly<Record<string, unknown>> }) {
  const picture = adjusterPictures[kind];
  const own = adjusterKinds[kind];
  if (!picture || !own) return null;
  const whole = wholeAdjuster(typed);
  const { from, to } = whole ? own.step(whole) : own.sample;
  const shown = whole ?? ({ ...own.sample.adjuster, id: 'sample', kind } as unknown as Adjuster);
  return <picture.Picture adjuster={shown} from={from} to={to} corner="LF" />;
}
