/** What one step of each adjuster does to its wheel, as soon as the core can work it out, and what nobody knows of it. */
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { labelOf } from '../../../core/adjuster/names.ts';
import type { Adjuster, Axle, AxleName, Suspension } from '../../../core/contract.ts';
import { InputError } from '../../../core/input-error.ts';
import type { StepEffect } from '../../../core/pose/effects.ts';
import type { FieldPath } from '../../../core/rule.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { type CallOptions, engine } from '../../engine/index.ts';
import { type Asked, useAsked } from '../../state/asking.ts';
import { units } from '../../state/preferences.ts';
import { angleText } from '../../state/units.ts';
import { words } from '../../state/words.ts';
import { axleOf, type List } from './car-texts.ts';
import type { Form } from './form.ts';

interface Told {
  readonly effects: readonly StepEffect[];
  /** By adjuster: what is not right with it yet. */
  readonly refused: Readonly<Record<string, InputError>>;
}
export interface AxleEffects {
  readonly kind: string;
  readonly sides: readonly { readonly title: string; readonly told: Asked<Told> }[];
}

/** Both sides at once where they are alike; of a list that is one side's, that side. */
export function useEffects(form: Form, axle: AxleName, list: List): AxleEffects {
  // The core checks what the texts say: this cast promises nothing.
  const whole = axleOf(form.texts, axle, form.record?.car[axle]) as unknown as Axle;
  const { rightAdjusters, ...typed } = { ...whole, adjusters: whole[list] ?? whole.adjusters };
  const { suspension, rightSuspension } = typed;
  const ofOne = (one: Suspension): Ask => ({
    about: one,
    of: (adjusters, options) => engine.call('adjusterEffects', [one, adjusters], options),
  });
  // One piece: what a step does to either wheel hangs on the points of both sides.
  const ofPiece = (side: 'left' | 'right'): Ask => ({
    about: [typed, side],
    of: async (adjusters, options) => (await engine.call('axleEffects', [{ ...typed, adjusters }], options))[side],
  });
  const piece = rightSuspension && suspensionKinds[suspension.kind]?.rigidAxle;
  const own = ofList(list, rightAdjusters !== undefined, rightSuspension !== undefined);
  const left = useTold(
    own.left ? (piece ? ofPiece('left') : ofOne(suspension)) : undefined,
    typed.adjusters,
    `effects ${axle} ${list}`,
  );
  const apart = own.right ? (piece ? ofPiece('right') : ofOne(rightSuspension ?? suspension)) : undefined;
  const right = useTold(apart, typed.adjusters, `effects ${axle} right ${list}`);
  const both = own.left && own.right;
  const sides = [
    ...(own.left ? [{ title: both ? 'Left' : '', told: left }] : []),
    ...(own.right ? [{ title: both ? 'Right' : '', told: right }] : []),
  ];
  return { kind: suspension.kind, sides };
}

/** Which sides a list is shown for: a right side that is the mirror in all shows what the left one does. */
function ofList(list: List, hasOwnList: boolean, hasOwnPoints: boolean) {
  if (hasOwnList) return { left: list === 'adjusters', right: list === 'rightAdjusters' };
  return { left: true, right: hasOwnPoints };
}

interface Ask {
  /** What the answer hangs on beside the adjusters. */
  readonly about: unknown;
  readonly of: (adjusters: readonly Adjuster[], options: CallOptions) => Promise<readonly StepEffect[]>;
}

function useTold(ask: Ask | undefined, adjusters: readonly Adjuster[], latest: string): Asked<Told> {
  const question = ask && adjusters.length > 0 ? `effects ${JSON.stringify([ask.about, adjusters])}` : undefined;
  return useAsked(question, (signal) => tell((ask as Ask).of, adjusters, { signal, latest }));
}

/** One that is only half typed must not hide what the others do: it is set aside with what the core says of it. */
async function tell(effectsOf: Ask['of'], adjusters: readonly Adjuster[], options: CallOptions): Promise<Told> {
  const refused: Record<string, InputError> = {};
  let left = adjusters;
  for (;;) {
    try {
      return { effects: await effectsOf(left, options), refused };
    } catch (error) {
      const at = error instanceof InputError ? /\badjusters\[(\d+)\]/.exec(error.field)?.[1] : undefined;
      const wrong = at === undefined ? undefined : left[Number(at)];
      if (!wrong) throw error;
      refused[wrong.id] = error as InputError;
      left = left.filter((one) => one !== wrong);
    }
  }
}

interface StepProps {
  readonly effects: AxleEffects;
  readonly adjuster: { readonly id: string; readonly kind: string };
}

export function StepEffects({ effects: { kind, sides }, adjuster }: StepProps) {
  const known = sides.flatMap(({ title, told }) => {
    const effect = told.value?.effects.find((one) => one.adjuster === adjuster.id);
    if (!effect) return [];
    const { otherWheel } = effect;
    return otherWheel
      ? [
          { title: title || 'This side', effect },
          { title: title ? `${title}, to the other` : 'Other side', effect: { ...otherWheel, said: effect.said } },
        ]
      : [{ title, effect }];
  });
  if (known.length === 0) {
    return (
      <p class="soft" role="status">
        {whyNot(adjuster, sides[0]?.told)}
      </p>
    );
  }
  return (
    <>
      <table class="paper-table effects">
        <caption>One step: {known[0] && words.step(known[0].effect.said, units.value)}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="visually-hidden">Side</span>
            </th>
            <th scope="col">Caster</th>
            <th scope="col">Camber</th>
            <th scope="col">Toe</th>
          </tr>
        </thead>
        <tbody>
          {known.map(({ title, effect }) => (
            <tr key={title}>
              <th scope="row">{title || 'Degrees'}</th>
              <td>{show('caster' in effect ? effect.caster : undefined)}</td>
              <td>{show(effect.camber)}</td>
              <td>{show(effect.toe)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {unknowns(kind, adjuster.kind).map((sentence) => (
        <p key={sentence} class="soft">
          {sentence}
        </p>
      ))}
    </>
  );
}

const show = (degrees: number | undefined): string => (degrees === undefined ? '–' : angleText(degrees, true));

function whyNot({ id, kind }: StepProps['adjuster'], told: Asked<Told> | undefined): string {
  const error = told?.value?.refused[id] ?? told?.error;
  if (error instanceof InputError) {
    const { value, rule } = error;
    // Within the adjuster, whose card this is.
    const field = error.field.replace(/^(axle\.)?adjusters\[\d+\]\.?/, '');
    const asked = (path: FieldPath) => labelOf(kind, path);
    return `What a step does shows here once this is right. ${words.refusal({ field, value, rule }, { asked }, units.value)}`;
  }
  if (error) return error.message;
  return told?.value ? 'Its step cannot be reached with these points: look at both.' : 'Working out what a step does…';
}

/** What the geometry, or the lack of it, leaves open. */
function unknowns(suspension: string, adjuster: string): string[] {
  const held = suspensionKinds[suspension];
  const byChart = adjusterKinds[adjuster]?.byChart;
  const bare = held?.points.length === 0;
  return [
    ...(byChart ? ['As its chart says. What it does beyond that is not known.'] : []),
    ...(bare && !byChart ? ['There is no geometry: what else it does is not known.'] : []),
    ...(held && !bare && !held.steeringAxis && !byChart
      ? ['No caster: this suspension has no steering axis that stays put.']
      : []),
  ];
}
