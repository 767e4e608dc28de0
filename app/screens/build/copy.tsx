/** The build of another car on this one's card: all of it, or one axle with its adjusters and windows. */
import { useState } from 'preact/hooks';
import { records } from '../../state/records.ts';
import { AXLES, axleTexts, textsOf } from './car-texts.ts';
import type { Form } from './form.ts';
import { lengthOf } from './numbers.ts';

const OWN = ['car.label', 'car.plate', 'car.notes'];

export function CopyFrom({ form }: { readonly form: Form }) {
  const others = records.value.cars.filter(({ id }) => id !== form.id);
  const [picked, pick] = useState('');
  const other = others.find(({ id }) => id === picked);
  if (others.length === 0) return null;
  const whole = () => {
    if (!other) return;
    const texts = Object.entries(textsOf(other)).filter(([key]) => !OWN.includes(key));
    const under = ['car.wheel', 'car.steeringRatio', ...AXLES.flatMap((axle) => [`car.${axle}`, `spec.${axle}`])];
    form.fill(Object.fromEntries(texts), under, `The build of ${other.car.label} copied`);
  };
  const oneAxle = (axle: (typeof AXLES)[number]) => {
    if (!other) return;
    const rim = lengthOf(form.texts['car.wheel.rimDiameter']);
    const texts = axleTexts(other, axle, typeof rim === 'number' ? rim : other.car.wheel.rimDiameter);
    form.fill(texts, [`car.${axle}`, `spec.${axle}`], `The ${axle} axle of ${other.car.label} copied`);
  };
  return (
    <>
      <label class="field">
        <span>Copy from another car</span>
        <select value={picked} onChange={(event) => pick(event.currentTarget.value)}>
          <option value="">choose</option>
          {others.map(({ id, car }) => (
            <option key={id} value={id}>
              {car.label}
            </option>
          ))}
        </select>
        <span class="soft">its suspension, adjusters and windows</span>
      </label>
      {other && (
        <div class="pair copy-pair">
          <button type="button" class="quiet" onClick={whole}>
            Whole build
          </button>
          {AXLES.map((axle) => (
            <button key={axle} type="button" class="quiet" onClick={() => oneAxle(axle)}>
              {axle === 'front' ? 'Front axle' : 'Rear axle'}
            </button>
          ))}
        </div>
      )}
    </>
  );
}
