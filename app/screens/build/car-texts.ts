/**
 * A car and its windows as texts and back. A text is a number only where it reads as one; else it goes to the core as
 * typed, which refuses it by name. What the card does not ask, and what was not touched, stays as it is on file.
 */
import type { Adjuster, Axle, AxleName } from '../../../core/contract.ts';
import type { CarRecord } from '../../../core/records/stored.ts';
import { adjusterFrom, textsOfAdjuster } from './adjuster-fields.ts';
import { startOf, startTexts } from './axle-start.ts';
import { lengthOf, lengthText, plainText, ratioOf, type Texts, unlessTyped } from './numbers.ts';
import { suspensionOf, suspensionTexts } from './suspension-texts.ts';
import { axleWindowsOf, axleWindowTexts } from './window-texts.ts';

export const AXLES = ['front', 'rear'] as const satisfies AxleName[];
export const isSteered = (texts: Texts, axle: AxleName): boolean =>
  (texts[`car.${axle}.steered`] ?? (axle === 'front' ? 'yes' : 'no')) === 'yes';
export const hasOwnRight = (texts: Texts, axle: AxleName): boolean => texts[`car.${axle}.right`] === 'own';

/** Which adjusters of an axle: those of both sides, or of the left where the right ones are apart; or those. */
export type List = 'adjusters' | 'rightAdjusters';
export const ownListPath = (axle: AxleName): string => `car.${axle}.rightList`;
export const hasOwnList = (texts: Texts, axle: AxleName): boolean => texts[ownListPath(axle)] === 'own';

const lengthOrNone = (mm: number | undefined): string => (mm === undefined ? '' : lengthText(mm));
/** What the maker's toe figures are lengths at: the gauge's diameter, unless it is another. */
export const toeDiameter = ({ car, spec }: Pick<CarRecord, 'car' | 'spec'>): number | undefined =>
  spec.toeDiameter ?? car.wheel.rimDiameter;

export function textsOf(record: CarRecord): Texts {
  const { car } = record;
  return {
    'car.label': car.label,
    'car.plate': car.plate ?? '',
    'car.customer': car.customer ?? '',
    'car.vin': car.vin ?? '',
    'car.tyres': car.tyres ?? '',
    'car.notes': car.notes ?? '',
    'car.wheel.rimDiameter': lengthOrNone(car.wheel.rimDiameter),
    'spec.toeDiameter': lengthOrNone(record.spec.toeDiameter),
    'car.steeringRatio': plainText(car.steeringRatio),
    'car.wheelbase': lengthOrNone(car.wheelbase),
    ...axleTexts(record, 'front', toeDiameter(record)),
    ...axleTexts(record, 'rear', toeDiameter(record)),
  };
}

/** One axle with its adjusters and windows; toe as a length at `rim`, mm. */
export function axleTexts({ car, spec }: CarRecord, axle: AxleName, rim: number | undefined): Texts {
  const { suspension, rightSuspension, adjusters, rightAdjusters, steered, start } = car[axle];
  const path = `car.${axle}`;
  return {
    [`${path}.steered`]: steered ? 'yes' : 'no',
    [`${path}.right`]: rightSuspension ? 'own' : '',
    ...suspensionTexts(suspension, `${path}.suspension`),
    ...(rightSuspension ? suspensionTexts(rightSuspension, `${path}.rightSuspension`) : {}),
    ...listTexts(adjusters, `${path}.adjusters`),
    [ownListPath(axle)]: rightAdjusters ? 'own' : '',
    ...listTexts(rightAdjusters ?? [], `${path}.rightAdjusters`),
    ...startTexts(start, axle),
    ...axleWindowTexts(spec[axle], `spec.${axle}`, rim),
  };
}

const listTexts = (list: readonly Adjuster[], path: string): Texts =>
  Object.assign({}, ...list.map((one, i) => adjusterTexts(one, `${path}[${i}]`)));

export const adjusterTexts = (adjuster: Adjuster, path: string): Texts => ({
  [`${path}.id`]: adjuster.id,
  [`${path}.kind`]: adjuster.kind,
  ...textsOfAdjuster(adjuster, path),
});

/** The car file that the texts say, unchecked. */
export function fileOf(texts: Texts, id: string, record: CarRecord | undefined) {
  const {
    plate: _,
    notes: __,
    customer: _c,
    vin: _v,
    tyres: _t,
    steeringRatio,
    wheelbase: onFile,
    ...own
  } = record?.car ?? {};
  const said = ['plate', 'customer', 'vin', 'tyres', 'notes'].flatMap((name) => {
    const text = texts[`car.${name}`]?.trim();
    return text ? [[name, text] as const] : [];
  });
  const rim = unlessTyped(texts['car.wheel.rimDiameter'], record?.car.wheel.rimDiameter, lengthText, lengthOf);
  const maker = unlessTyped(texts['spec.toeDiameter'], record?.spec.toeDiameter, lengthText, lengthOf);
  const ratio = unlessTyped(texts['car.steeringRatio'], steeringRatio, plainText, ratioOf);
  const wheelbase = unlessTyped(texts['car.wheelbase'], onFile, lengthText, lengthOf);
  const rims = { now: diameterOf(texts), before: record && toeDiameter(record) };
  return {
    format: 'cornerwright',
    version: 1,
    car: {
      ...own,
      id,
      label: texts['car.label']?.trim() ?? '',
      ...Object.fromEntries(said),
      wheel: rim === undefined ? {} : { rimDiameter: rim },
      ...(ratio === undefined ? {} : { steeringRatio: ratio }),
      ...(wheelbase === undefined ? {} : { wheelbase }),
      front: axleOf(texts, 'front', record?.car.front),
      rear: axleOf(texts, 'rear', record?.car.rear),
    },
    spec: {
      ...(maker === undefined ? {} : { toeDiameter: maker }),
      ...Object.fromEntries(
        AXLES.map((axle) => [axle, axleWindowsOf(texts, `spec.${axle}`, rims, record?.spec[axle])]),
      ),
    },
  };
}

/** mm, as the card says now what the maker's toe figures are lengths at; nothing where it does not. */
export function diameterOf(texts: Texts): number | undefined {
  const [maker, gauge] = ['spec.toeDiameter', 'car.wheel.rimDiameter'].map((path) => lengthOf(texts[path]));
  const one = maker ?? gauge;
  return typeof one === 'number' && one >= 100 && one <= 2000 ? one : undefined;
}

/** One axle that the texts say, unchecked. */
export function axleOf(texts: Texts, axle: AxleName, onFile: Axle | undefined) {
  const path = `car.${axle}`;
  const { rightSuspension, rightAdjusters, start: _, ...own }: Partial<Axle> = onFile ?? {};
  const right = hasOwnRight(texts, axle)
    ? { rightSuspension: suspensionOf(texts, `${path}.rightSuspension`, rightSuspension) }
    : {};
  const adjusters = listOf(texts, `${path}.adjusters`, own.adjusters);
  const ids = ['adjusters', 'rightAdjusters'].flatMap((list) =>
    indices(texts, `${path}.${list}`).map((i) => texts[`${path}.${list}[${i}].id`] ?? ''),
  );
  const start = startOf(texts, axle, texts[`${path}.suspension.kind`] ?? '', ids);
  return {
    ...own,
    suspension: suspensionOf(texts, `${path}.suspension`, own.suspension),
    ...right,
    adjusters,
    ...(start && { start }),
    // One that was copied from the left is, but for what is typed, what is on file there.
    ...(hasOwnList(texts, axle) && {
      rightAdjusters: listOf(texts, `${path}.rightAdjusters`, rightAdjusters ?? own.adjusters),
    }),
    steered: isSteered(texts, axle),
  };
}

const listOf = (texts: Texts, path: string, onFile: readonly Adjuster[] = []) =>
  indices(texts, path).map((i) => {
    const here = `${path}[${i}]`;
    return adjusterFrom(
      texts,
      here,
      onFile.find((one) => one.id === texts[`${here}.id`]),
    );
  });

/** Numbers in use as `path[n]`, ascending. */
export function indices(texts: Texts, path: string): readonly number[] {
  const found = Object.keys(texts)
    .filter((key) => key.startsWith(`${path}[`))
    .map((key) => Number.parseInt(key.slice(path.length + 1), 10));
  return [...new Set(found)].sort((a, b) => a - b);
}
