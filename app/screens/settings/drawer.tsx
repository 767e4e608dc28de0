/** How many shims of each size the shop has: plans then propose only packs that can be made of them. */

import { useEffect, useRef } from 'preact/hooks';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import type { ShimCount } from '../../../core/contract.ts';
import { millionths } from '../../../core/units/shim-drawer.ts';
import { carsInOrder } from '../../state/car-list.ts';
import { drawer, setDrawer } from '../../state/preferences.ts';
import { records } from '../../state/records.ts';
import { sameSize, sizeText } from '../../state/shim-size.ts';
import { Choose } from './choose.tsx';
import './drawer.css';

export function DrawerSettings() {
  const { counted, shims } = drawer.value;
  return (
    <>
      <Choose
        label="Shims"
        value={counted ? 'yes' : 'no'}
        onChoose={(answer) => setDrawer({ counted: answer === 'yes' })}
        choices={[
          ['no', 'not counted'],
          ['yes', 'counted'],
        ]}
      />
      {counted ? <Counted shims={shims} /> : <p class="soft">Plans take it that every shim is at hand.</p>}
    </>
  );
}

function Counted({ shims }: { readonly shims: readonly ShimCount[] }) {
  const offered = sizesOnFile().filter((size) => !shims.some((one) => sameSize(one.size, size)));
  const set = (size: number, count: number) => setDrawer({ shims: sorted([...without(shims, size), { size, count }]) });
  const status = useRef<HTMLParagraphElement>(null);
  const rows = useRef(shims.length);
  useEffect(() => {
    // The button that was pressed is gone with its row.
    if (shims.length < rows.current) status.current?.focus();
    rows.current = shims.length;
  }, [shims.length]);
  return (
    <>
      <p class="soft" ref={status} tabIndex={-1}>
        A plan uses these and what is known to come out of packs. A size that is not listed is taken as plenty. The
        count is yours: a move that is done changes nothing here.
      </p>
      {shims.map(({ size, count }) => (
        <Row
          key={size}
          size={size}
          count={count}
          onCount={(next) => set(size, next)}
          onRemove={() => setDrawer({ shims: without(shims, size) })}
        />
      ))}
      {offered.length > 0 && (
        <fieldset class="drawer-add">
          <legend>Add a size</legend>
          {offered.map((size) => (
            <button key={size} type="button" class="quiet" onClick={() => set(size, 0)}>
              {sizeText(size)}
            </button>
          ))}
        </fieldset>
      )}
      {shims.length === 0 && offered.length === 0 && <p>No car on file has a shim pack yet.</p>}
    </>
  );
}

interface RowProps extends ShimCount {
  readonly onCount: (count: number) => void;
  readonly onRemove: () => void;
}

const MOST = 999;

function Row({ size, count, onCount, onRemove }: RowProps) {
  const name = sizeText(size);
  return (
    <section class="drawer-row" aria-label={`Shims of ${name}`}>
      <strong>{name}</strong>
      <button
        type="button"
        class="quiet"
        aria-label={`One ${name} shim less`}
        disabled={count === 0}
        onClick={() => onCount(count - 1)}
      >
        −
      </button>
      <output>{count}</output>
      <button
        type="button"
        class="quiet"
        aria-label={`One ${name} shim more`}
        disabled={count >= MOST}
        onClick={() => onCount(count + 1)}
      >
        +
      </button>
      <button type="button" class="quiet drawer-off" aria-label={`Take ${name} off the list`} onClick={onRemove}>
        ×
      </button>
    </section>
  );
}

/** The sizes of all packs of the cars on file, the thickest first. */
function sizesOnFile(): number[] {
  const all = carsInOrder(records.value).flatMap(({ car }) =>
    [car.front, car.rear].flatMap(({ adjusters, rightAdjusters = [] }) =>
      [...adjusters, ...rightAdjusters].flatMap((one): readonly number[] => {
        // A car may be half built: its packs have no sizes yet.
        const sizes = adjusterKinds[one.kind]?.stack?.(one).sizes;
        return Array.isArray(sizes) ? sizes : [];
      }),
    ),
  );
  return [...new Map(all.map((size) => [millionths(size), size])).values()].sort((a, b) => b - a);
}

const without = (shims: readonly ShimCount[], size: number): ShimCount[] =>
  shims.filter((one) => !sameSize(one.size, size));
const sorted = (shims: readonly ShimCount[]): ShimCount[] => [...shims].sort((a, b) => b.size - a.size);
