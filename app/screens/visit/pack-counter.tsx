/** What is in a pack of shims, size by size under the thumb: its thickness follows. */
import type { Adjuster, ShimCount } from '../../../core/contract.ts';
import { counted, oneByOne, thicknessOf } from '../../state/packs.ts';
import { sameSize, sizeText } from '../../state/shim-size.ts';
import { positionText } from '../../state/standing.ts';

interface Props {
  readonly caption: string;
  readonly adjuster: Adjuster;
  /** Absent while nothing was counted. */
  readonly shims: readonly ShimCount[] | undefined;
  readonly onChange: (shims: readonly ShimCount[]) => void;
  readonly onDone: () => void;
}

export function PackCounter({ caption, adjuster, shims: known, onChange, onDone }: Props) {
  const shims = known ?? [];
  const sizes = [...new Set<number>([...(adjuster.sizes as number[]), ...shims.map(({ size }) => size)])];
  const count = (size: number): number => shims.find((one) => sameSize(one.size, size))?.count ?? 0;
  const more = (size: number) => onChange(counted([...oneByOne(shims), size]));
  const less = (size: number) =>
    onChange(
      shims
        .flatMap((one) => (sameSize(one.size, size) ? { ...one, count: one.count - 1 } : one))
        .filter(({ count }) => count > 0),
    );
  const room = (adjuster.max as number) - thicknessOf(shims);
  return (
    <section class="dock stepper" aria-label={caption}>
      <p class="stepper-caption">{caption}: what is in the pack</p>
      <div class="pack-rows">
        {sizes
          .sort((a, b) => b - a)
          .map((size) => (
            <div key={size} class="pack-row">
              <strong>{sizeText(size)}</strong>
              <button
                type="button"
                aria-label={`One ${sizeText(size)} shim less`}
                disabled={count(size) === 0}
                onClick={() => less(size)}
              >
                −
              </button>
              <output aria-label={`Shims of ${sizeText(size)}`}>{count(size)}</output>
              <button
                type="button"
                aria-label={`One ${sizeText(size)} shim more`}
                disabled={size > room + 1e-6}
                onClick={() => more(size)}
              >
                +
              </button>
            </div>
          ))}
      </div>
      <button type="button" class="action-bar-primary pack-done" onClick={onDone}>
        {known ? `These make ${positionText(adjuster, thicknessOf(shims))}` : 'Back'}
      </button>
    </section>
  );
}
