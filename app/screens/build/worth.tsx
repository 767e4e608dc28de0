/**
 * Of an axle that is known as a usual layout: which length a tape would help most with now, by how much it would raise the
 * chance, and where it is measured. Each may be left out for ever.
 */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { AxleName, CarFile } from '../../../core/contract.ts';
import type { Worth as Answer, LengthWorth } from '../../../core/index.ts';
import { lengthsOf } from '../../../core/suspension/tape/measure.ts';
import type { TapeDimension } from '../../../core/suspension/tape/tape.ts';
import { engine } from '../../engine/index.ts';
import { SuspensionDrawing } from '../../parts/suspension-drawing.tsx';
import { useAsked } from '../../state/asking.ts';
import { gauge, live } from '../../state/preferences.ts';
import { fileOf } from './car-texts.ts';
import { TextField } from './field.tsx';
import type { Form } from './form.ts';
import { cardUnits } from './numbers.ts';
import { pointsOf } from './points.ts';
import { isMissing, problems } from './problems.ts';
import { measuredPath } from './suspension-texts.ts';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
  /** Of the suspension. */
  readonly path: string;
  readonly kind: string;
}

/** A gain of less is not worth a tape; trade practice, no source. */
const WORTH_IT = 0.02;
/** Surer than this nothing need be measured for. */
const SURE = 0.95;
/** So many are offered beside the first. */
const MORE = 4;

const percent = (chance: number): number => Math.round(100 * chance);
/** `60 → 74 %: worth it` */
const worthText = (now: number, { chance }: LengthWorth): string =>
  `${percent(now)} → ${percent(chance)} %: ${isWorth(now, chance) ? 'worth it' : 'not needed'}`;
const isWorth = (now: number, chance: number): boolean => now < SURE && chance - now >= WORTH_IT;

/** The last answer stands while a figure is typed, for which there may be none yet. */
function useWorth({ form, axle }: Props): Answer | undefined {
  const file = fileOf(form.texts, form.id, form.record) as unknown as CarFile;
  const label = form.texts['car.label']?.trim() || '–';
  const asked = { ...file, car: { ...file.car, label } };
  const { angles } = live.value;
  const options = { ...(gauge.value && { gauge: gauge.value }), ...(angles.length > 0 && { live: angles }) };
  // Of a card with something wrong the core says nothing but that.
  const ready = problems.value.every((one) => one.field === 'car.label' && isMissing(one));
  const question = ready ? `worth ${JSON.stringify([asked, options])}` : undefined;
  const { value } = useAsked(question, (signal) =>
    engine.call('dimensionWorth', [asked, options], { signal, latest: 'worth' }),
  );
  const last = useRef<typeof value>(undefined);
  useEffect(() => {
    if (value) last.current = value;
  }, [value]);
  return (value ?? last.current)?.[axle];
}

const hasUsual = ({ texts }: Form, axle: AxleName): boolean =>
  Object.entries(texts).some(([key, text]) => text === 'yes' && /\.usual$/.test(key) && key.startsWith(`car.${axle}.`));

export function Worth(props: Props) {
  const { form, axle, path, kind } = props;
  const worth = useWorth(props);
  const [chosen, choose] = useState<string | undefined>();
  const all = lengthsOf(kind);
  const measured = all.filter(({ name }) => form.texts[measuredPath(path, name)] && name !== chosen);
  const left = worth?.lengths.filter(({ name }) => name !== chosen) ?? [];
  const now = worth?.now ?? 0;
  const worthy = left.filter(({ chance }) => isWorth(now, chance));
  const up = chosen ?? worthy[0]?.name;
  const one = all.find(({ name }) => name === up);
  const own = worth?.lengths.find(({ name }) => name === up);
  const others = worthy.filter(({ name }) => name !== up).slice(0, MORE);
  return (
    <section class="worth" aria-label="What a tape would bring">
      <h3>What a tape would bring</h3>
      {!worth && <p class="soft">Shows once adjusters and windows are there.</p>}
      {worth && worthy.length === 0 && !chosen && (
        <p role="status">
          {percent(now)} % of such axles come in at the first re-measure.{' '}
          {now < SURE && worth.all - now >= WORTH_IT
            ? `No length alone raises that by much; all of them together: ${percent(worth.all)} %. A move that is made and read teaches more.`
            : 'No length would raise that by much: not needed.'}
        </p>
      )}
      {hasUsual(form, axle) && (
        <p class="soft">
          Some of its adjusters stand with usual figures: their own throw or pitch, typed under the adjusters, helps
          too.
        </p>
      )}
      {one && (
        <div class="worth-one">
          <SuspensionDrawing kind={kind} highlight={one.between} points={pointsOf(form.texts, path)} close />
          <p class="worth-figure" role="status">
            {own ? worthText(now, own) : `${percent(now)} % with it`}
          </p>
          <Length form={form} path={path} dimension={one} onFocus={() => choose(one.name)} />
        </div>
      )}
      {others.map((length) => (
        <button key={length.name} type="button" class="quiet wide worth-row" onClick={() => choose(length.name)}>
          <span>{all.find(({ name }) => name === length.name)?.label}</span>
          <span class="soft">{worthText(now, length)}</span>
        </button>
      ))}
      {measured.map((dimension) => (
        <Length
          key={dimension.name}
          form={form}
          path={path}
          dimension={dimension}
          onFocus={() => choose(dimension.name)}
        />
      ))}
    </section>
  );
}

interface LengthProps extends Pick<Props, 'form' | 'path'> {
  readonly dimension: TapeDimension;
  readonly onFocus: () => void;
}

function Length({ form, path, dimension, onFocus }: LengthProps) {
  return (
    <TextField
      form={form}
      path={measuredPath(path, dimension.name)}
      label={`${dimension.label}, ${cardUnits().length}`}
      mode="decimal"
      onFocus={onFocus}
    />
  );
}
