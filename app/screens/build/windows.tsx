/** The windows of one axle: low, aim and high of each angle, as the maker's information says. */
import type { AxleName } from '../../../core/contract.ts';
import { placeWord } from '../../state/judge.ts';
import { units } from '../../state/preferences.ts';
import { toeUnitWord } from '../../state/units.ts';
import { WINDOWS } from './car-texts.ts';
import { NumbersField, Refused } from './field.tsx';
import type { Form } from './form.ts';
import { cardUnits } from './numbers.ts';

export function WindowsSection({ form, axle }: { readonly form: Form; readonly axle: AxleName }) {
  return (
    <>
      <p class="soft">
        From the maker’s information; the app knows none. In{' '}
        {units.value.angle === 'degrees' ? 'degrees' : 'degrees and minutes'}
        {cardUnits().toe === 'angle' ? '' : `, toe in ${toeUnitWord(cardUnits().toe)}`}. An empty aim is the middle.
        Thrust + points to the right; cross is left less right.
      </p>
      {WINDOWS[axle].map((angle) => {
        const path = `spec.${axle}.${angle}`;
        const name = angle === 'thrustAngle' ? placeWord(axle, angle) : placeWord(axle, angle).replace(`${axle} `, '');
        return (
          <div key={angle}>
            <NumbersField
              form={form}
              label={name.charAt(0).toUpperCase() + name.slice(1)}
              parts={(['low', 'aim', 'high'] as const).map((end) => ({ label: end, path: `${path}.${end}` }))}
            />
            <Refused path={path} />
          </div>
        );
      })}
    </>
  );
}
