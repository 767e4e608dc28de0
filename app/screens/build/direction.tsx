/** Which way an adjuster pushes its point: one of six words, or any three numbers. */
import type { Vec3 } from '../../../core/contract.ts';
import { directionTexts } from './adjuster-fields.ts';
import { NumbersField, Refused } from './field.tsx';
import type { Form } from './form.ts';
import { plainOf } from './numbers.ts';

const WAYS: readonly (readonly [string, Vec3])[] = [
  ['outboard', [0, 1, 0]],
  ['inboard', [0, -1, 0]],
  ['forward', [1, 0, 0]],
  ['rearward', [-1, 0, 0]],
  ['up', [0, 0, 1]],
  ['down', [0, 0, -1]],
];
const SLANT = 'at a slant';

export function DirectionField({
  form,
  path,
  label,
}: {
  readonly form: Form;
  readonly path: string;
  readonly label: string;
}) {
  const places = [0, 1, 2].map((i) => `${path}[${i}]`);
  const now = places.map((place) => plainOf(form.texts[place]));
  const known = WAYS.find(([, way]) => way.every((x, i) => x === now[i]))?.[0];
  // Chosen by hand the three numbers stay open, whatever they say on the way to what they shall say.
  const open = `@slant ${path}`;
  const slant = known === undefined ? now.some((x) => x !== undefined) : form.texts[open] === 'yes';
  const pick = (word: string) => {
    const way = WAYS.find(([name]) => name === word)?.[1];
    form.put(way ? { ...directionTexts(path, way), [open]: '' } : { [open]: 'yes' });
  };
  return (
    <>
      <label class="field">
        <span>{label}</span>
        <select value={slant ? SLANT : (known ?? '')} onChange={(event) => pick(event.currentTarget.value)}>
          {!slant && known === undefined && <option value="">choose</option>}
          {[...WAYS.map(([word]) => word), SLANT].map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      </label>
      {slant && (
        <NumbersField
          form={form}
          label="As a slant: so much of each"
          hint="only their ratio counts: 0, 10 and 1 is outboard and a little up"
          parts={['forward', 'outboard', 'up'].map((name, i) => ({ label: name, path: places[i] as string }))}
        />
      )}
      <Refused path={path} />
    </>
  );
}
