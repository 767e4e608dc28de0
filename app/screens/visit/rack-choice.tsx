/** How the rack shows its figures: how many decimals, and in which order. Said once, changed at a touch. */
import { entryOf } from '../../state/entry.ts';
import { figureOf } from '../../state/fields.ts';
import { type Rack, rack } from '../../state/preferences.ts';
import type { VisitView } from '../../state/visits.ts';
import { askedAbove, Choose, Decimals } from './decimals.tsx';

type Of = keyof Rack['decimals'];
const LEGENDS: Readonly<Record<Of, string>> = {
  angle: 'Your rack shows caster and camber as',
  toe: 'and toe as',
  mm: 'and mm of toe as',
  inch: 'and inches of toe as',
};

export function RackChoice({ view }: { readonly view: VisitView }) {
  const { fields, own } = entryOf(view);
  const asked = new Set(fields.map((field) => figureOf(field, own)));
  const above = askedAbove(view);
  // In minutes there is nothing to choose: they have two digits.
  const shown = (Object.keys(LEGENDS) as Of[]).filter(
    (of) => asked.has(of) && !above.includes(of) && (of === 'mm' || of === 'inch' || own.angle === 'degrees'),
  );
  return (
    <>
      {shown.map((of) => (
        <Decimals key={of} of={[of]} legend={LEGENDS[of]} />
      ))}
      {asked.size > 0 && own.angle === 'degrees' && (
        <p class="soft">
          A cell passes on by itself once it has as many decimals as the rack shows; with fewer, press Next.
        </p>
      )}
      <fieldset class="choice">
        <legend>The rack goes</legend>
        <Choose on={rack.value.order === 'across'} label="left and right" to={{ order: 'across' }} />
        <Choose on={rack.value.order === 'wheel'} label="wheel by wheel" to={{ order: 'wheel' }} />
      </fieldset>
    </>
  );
}
