/** The build of another car on this one's card: all of it, or one axle with its adjusters and windows. */
import { useState } from 'preact/hooks';
import { carsInOrder } from '../../state/car-list.ts';
import { records } from '../../state/records.ts';
import { useTaught } from '../../state/taught.ts';
import { startPath, startTexts } from './axle-start.ts';
import { AXLES, axleTexts, diameterOf, textsOf, toeDiameter } from './car-texts.ts';
import type { Form } from './form.ts';

const OWN = ['car.label', 'car.plate', 'car.customer', 'car.vin', 'car.tyres', 'car.notes'];

export function CopyFrom({ form }: { readonly form: Form }) {
  const others = carsInOrder(records.value).filter(({ id }) => id !== form.id);
  const [picked, pick] = useState('');
  const other = others.find(({ id }) => id === picked);
  const { value: taught } = useTaught(other);
  const [taken, take] = useState(false);
  const start = taken ? (taught?.start ?? {}) : {};
  const starts = (axle: (typeof AXLES)[number]) => ({ [startPath(axle)]: '', ...startTexts(start[axle], axle) });
  const learned = Object.keys(start).length > 0 ? ', with what was learned there' : '';
  if (others.length === 0) return null;
  const whole = () => {
    if (!other) return;
    const texts = Object.entries({ ...textsOf(other), ...starts('front'), ...starts('rear') }).filter(
      ([key]) => !OWN.includes(key),
    );
    const under = [
      'car.wheel',
      'car.steeringRatio',
      'spec.toeDiameter',
      ...AXLES.flatMap((axle) => [`car.${axle}`, `spec.${axle}`]),
    ];
    form.fill(Object.fromEntries(texts), under, `The build of ${other.car.label} copied${learned}`);
  };
  const oneAxle = (axle: (typeof AXLES)[number]) => {
    if (!other) return;
    const texts = { ...axleTexts(other, axle, diameterOf(form.texts) ?? toeDiameter(other)), ...starts(axle) };
    form.fill(texts, [`car.${axle}`, `spec.${axle}`], `The ${axle} axle of ${other.car.label} copied${learned}`);
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
      {other && taught && Object.keys(taught.start).length > 0 && (
        <label class="torque copy-learned">
          <input type="checkbox" checked={taken} onChange={(event) => take(event.currentTarget.checked)} />
          <span>
            With what was learned there
            <small class="soft">
              {taught.readings} readings of it; for a car of the same build. Its own readings take over.
            </small>
          </span>
        </label>
      )}
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
