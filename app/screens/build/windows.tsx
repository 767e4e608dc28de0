/** The windows of one axle: low, aim and high of each angle, as the maker's information says. */
import type { AxleName } from '../../../core/contract.ts';
import { AXLE_ANGLES, AXLE_CHANGES } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { figure, inShop, partAngle } from '../../../core/units/shop.ts';
import { toeUnitWord } from '../../state/units.ts';
import { diameterOf, isSteered } from './car-texts.ts';
import { Buttons, NumbersField } from './field.tsx';
import type { Form } from './form.ts';
import { cardUnits, type Texts } from './numbers.ts';
import { aroundAim, ENDS, SIDES, sidesDiffer, typedWindow, WHEEL_WINDOWS, withSides } from './window-texts.ts';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
}

export function WindowsSection({ form, axle }: Props) {
  const path = `spec.${axle}`;
  const steered = isSteered(form.texts, axle);
  const differ = sidesDiffer(form.texts, path);
  const onLinks = suspensionKinds[form.texts[`car.${axle}.suspension.kind`] ?? '']?.rigidAxle?.onLinks;
  // Caster is set where wheels steer; one that a file holds elsewhere is shown all the same.
  const wanted = (angle: string): boolean => steered || !/caster/i.test(angle) || hasTexts(form.texts, path, angle);
  const diameter = diameterOf(form.texts);
  const one = (place: string, name: string) => {
    const at = `${path}.${place}`;
    const angle = place.split('.').at(-1) ?? place;
    const around = aroundAim(form.texts, at, angle, diameter);
    return (
      <NumbersField
        key={place}
        form={form}
        label={name}
        parts={ENDS.map((end) => ({ label: end, path: `${at}.${end}` }))}
        whole={at}
        class="window-cells"
        mode="text"
        change={(cell, text) => typedWindow(form.texts, at, cell, text, angle, diameter)}
        {...(around && { hint: around })}
      />
    );
  };
  return (
    <>
      <p class="soft">
        From the maker’s information; the app knows none. In{' '}
        {cardUnits().angle === 'degrees' ? 'degrees' : 'degrees and minutes'}
        {cardUnits().toe === 'angle' ? '' : `, toe in ${toeUnitWord(cardUnits().toe)}`}. An empty aim is the middle; an
        aim typed as {cardUnits().angle === 'degrees' ? figure(-0.5, cardUnits()) : '−0°30′'} ±{' '}
        {cardUnits().angle === 'degrees' ? figure(0.75, cardUnits()) : '0°45′'} fills in both ends.{' '}
        {steered ? 'Steer-ahead' : 'Thrust'} + points to the right; cross is left less right.
      </p>
      <Buttons
        legend="Left and right wheel"
        options={[
          ['', 'have one window'],
          ['differ', 'each its own'],
        ]}
        value={differ ? 'differ' : ''}
        onPick={(value) => form.put(withSides(form.texts, path, value === 'differ'))}
      />
      {WHEEL_WINDOWS.filter(wanted).flatMap((angle) =>
        differ
          ? SIDES.map((side) => one(`${side}.${angle}`, `${title(side)} ${angle}`))
          : [one(angle, title(WORDS[angle]))],
      )}
      {AXLE_ANGLES.filter(wanted).map((angle) =>
        one(angle, angle === 'thrustAngle' && steered ? 'Steer-ahead' : title(WORDS[angle])),
      )}
      {AXLE_CHANGES.filter((change) => onLinks || hasTexts(form.texts, path, change)).map((change) =>
        one(change, title(WORDS[change])),
      )}
      {onLinks && (
        <p class="soft">
          How far the axle may go from where it is found: pinion + up; sideways + to the left, in {cardUnits().length}.
          Left empty the plan keeps to ±{partAngle(0.5, cardUnits())} and ±{inShop('{3 mm}', cardUnits())} where it can,
          and says so.
        </p>
      )}
    </>
  );
}

const WORDS = {
  caster: 'caster',
  camber: 'camber',
  toe: 'toe',
  totalToe: 'total toe',
  crossCamber: 'cross camber',
  crossCaster: 'cross caster',
  thrustAngle: 'thrust angle',
  pinionChange: 'pinion may go',
  lateralChange: 'axle may go aside',
} as const;
const title = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const hasTexts = (texts: Texts, path: string, angle: string): boolean =>
  Object.entries(texts).some(([key, text]) => text !== '' && key.startsWith(path) && key.includes(`.${angle}.`));
