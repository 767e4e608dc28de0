import type { FunctionComponent } from 'preact';
import type { Adjuster, Corner, Position } from '../../../../core/contract.ts';
import type { ShopUnits } from '../../../../core/units/shop.ts';

export interface FaceProps {
  readonly adjuster: Adjuster;
  readonly corner: Corner;
  /** Where it stands; the last that was known, where that is not known. */
  readonly position: Position;
  readonly unknown?: boolean;
  /** All that it may stand at. */
  readonly positions: readonly Position[];
  readonly units?: ShopUnits | undefined;
}

/** A place on the drawing that is touched for a position, px. */
export interface Mark {
  readonly position: Position;
  readonly x: number;
  readonly y: number;
}

/** An adjuster as it is looked at on the car, with its marks: the one nearest to a touch is where it stands. */
export interface AdjusterFace {
  readonly width: number;
  readonly height: number;
  readonly marks: (props: FaceProps) => readonly Mark[];
  /** What is drawn, inside the frame. */
  readonly Drawing: FunctionComponent<FaceProps>;
  /** From where it is seen, or what is touched, where the drawing does not say. */
  readonly says?: (props: FaceProps) => string;
}

/** px within which two marks are in one place. */
const SAME = 0.01;

/** The mark nearest to a touch; of several in one place, such as a turn further on, the one nearest to where it stands. */
export function nearest(marks: readonly Mark[], x: number, y: number, position: Position): Position | undefined {
  const far = (mark: Mark): number => Math.hypot(mark.x - x, mark.y - y);
  const apart = (mark: Mark): number => Math.abs(Number(mark.position) - Number(position)) || 0;
  const best = (a: Mark, b: Mark): Mark => {
    const by = far(b) - far(a);
    if (Math.abs(by) > SAME) return by < 0 ? b : a;
    return apart(b) < apart(a) ? b : a;
  };
  return marks.length === 0 ? undefined : marks.reduce(best).position;
}
