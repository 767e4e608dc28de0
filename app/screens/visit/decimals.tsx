/** How many decimals the rack shows: asked once, above the first form of all. */
import { DECIMALS } from '../../../core/records/preferences.ts';
import { entryOf } from '../../state/entry.ts';
import { figureOf } from '../../state/fields.ts';
import { type Rack, rack, setRack, units } from '../../state/preferences.ts';
import type { VisitView } from '../../state/visits.ts';

type Of = keyof Rack['decimals'];

/** What is asked above the form: nothing once it was answered, or all is typed; whoever goes on has taken what is shown. */
export function askedAbove(view: VisitView): readonly Of[] {
  const { fields, own, active } = entryOf(view);
  if (!active || !rack.value.assumed || own.angle === 'degrees-minutes') return [];
  const all = [...new Set(fields.map((field) => figureOf(field, own)))];
  return all.filter((of) => of === 'angle' || of === 'toe');
}

export function DecimalsQuestion({ view }: { readonly view: VisitView }) {
  const angles = askedAbove(view);
  if (angles.length === 0) return null;
  return (
    <div class="rack-question">
      <Decimals of={angles} legend="Your rack shows angles as" />
    </div>
  );
}

export function Decimals({ of, legend }: { readonly of: readonly Of[]; readonly legend: string }) {
  const { decimals } = rack.value;
  return (
    <fieldset class="choice">
      <legend>{legend}</legend>
      {DECIMALS.map((count) => (
        <Choose
          key={count}
          on={of.every((one) => decimals[one] === count)}
          label={`0${units.value.decimal}${'0'.repeat(count)}`}
          to={{ decimals: { ...decimals, ...Object.fromEntries(of.map((one) => [one, count])) } }}
        />
      ))}
    </fieldset>
  );
}

interface ChooseProps {
  readonly on: boolean;
  readonly label: string;
  readonly to: Parameters<typeof setRack>[0];
}

export function Choose({ on, label, to }: ChooseProps) {
  return (
    <button type="button" aria-pressed={on} onClick={() => setRack(to)}>
      {label}
    </button>
  );
}
