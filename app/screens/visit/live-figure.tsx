/** The pad for what the rack shows of another angle as it leads a move: it closes by itself once the figure has its decimals. */
import type { LiveAngle } from '../../../core/contract.ts';
import { Keypad } from '../../parts/keypad.tsx';
import { clearShown, type Of, othersOf, typeShown } from '../../state/by-rack.ts';
import { alongside } from '../../state/one-window.ts';
import { setUnits, units } from '../../state/preferences.ts';
import { isFraction } from '../../state/typing.ts';
import { unitsFor, valueText } from '../../state/units.ts';
import { words } from '../../state/words.ts';

interface Props extends Of {
  readonly angle: LiveAngle;
  readonly onDone: () => void;
}

export function Figure({ angle, onDone, ...of }: Props) {
  const { view, move } = of;
  const { car } = view.car;
  const one = othersOf(of).find((other) => other.angle === angle);
  if (!one) return null;
  const press = (key: string) => {
    if (alongside.value) return;
    if (key === 'dm') {
      setUnits({ angle: units.value.angle === 'degrees' ? 'degrees-minutes' : 'degrees' });
      return;
    }
    if (key === 'skip') clearShown(of, angle);
    if (key === 'skip' || key === 'next' || typeShown(of, angle, key)) onDone();
  };
  return (
    <Keypad
      onKey={press}
      caption={`${move.corner} ${angle}`}
      value={one.text}
      hint={
        one.error ? (
          <span role="alert" class="wrong">
            {words.refusal({ value: one.text, rule: one.error }, undefined, units.value)}
          </span>
        ) : (
          <>expected {valueText(angle, one.expected, car.wheel.rimDiameter)}</>
        )
      }
      decimal={units.value.decimal}
      mode={units.value.angle}
      fraction={isFraction(unitsFor(car), angle)}
      nextLabel="Done"
    />
  );
}
