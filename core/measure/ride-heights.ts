/** Ride heights of the four corners against those that are wanted: how far each end has to go, and how the body leans. */
import type { AxleName, Corner } from '../contract.ts';
import { AXLES } from '../corners.ts';
import { USUAL_SCATTER } from './instruments.ts';
import { type Measured, spreadOf } from './spread.ts';
import { given, within } from './within.ts';

/** mm, of each corner, to the place that the maker names. */
export type RideHeights = Readonly<Partial<Record<Corner, number>>>;

/** What four heights say of one axle, mm. */
export interface AxleHeight {
  /** By which the body has to go up here. */
  readonly raise: Measured;
  /** By which the left side stands higher than the right, beyond what is wanted. */
  readonly leftHigher: Measured;
}

/**
 * How far each end of the body has to go to the heights that are wanted, mm.
 * @param tape one standard deviation of a height, mm
 * @returns axles of which both corners were measured and are wanted
 * @throws InputError naming the field, such as `measured.LF`
 */
export function heightsOff(
  measured: RideHeights,
  wanted: RideHeights,
  tape: number = USUAL_SCATTER.tape,
): Readonly<Partial<Record<AxleName, AxleHeight>>> {
  for (const [list, heights] of Object.entries({ measured, wanted })) {
    for (const [corner, value] of Object.entries(given(list, heights)))
      within(`${list}.${corner}`, value, -500, 2000, 'mm');
  }
  const axles = Object.entries(AXLES).flatMap(([axle, [left, right]]) => {
    const [l, r, wl, wr] = [measured[left], measured[right], wanted[left], wanted[right]];
    if (l === undefined || r === undefined || wl === undefined || wr === undefined) return [];
    const off = spreadOf({ l: { value: l, sd: tape }, r: { value: r, sd: tape } }, (read) => ({
      raise: (wl - read.l + (wr - read.r)) / 2,
      leftHigher: read.l - wl - (read.r - wr),
    }));
    return [[axle, off]] as const;
  });
  return Object.fromEntries(axles);
}
