import type { ComponentChildren, FunctionComponent } from 'preact';
import type { Adjuster, Corner, Position } from '../../../core/contract.ts';
import { figure, type ShopUnits } from '../../../core/units/shop.ts';
import type { AdjusterFace } from './faces/face.ts';

/** Shims of one thickness, mm. */
export interface ShimCount {
  readonly size: number;
  readonly count: number;
}

/** What every adjuster's drawing is given. */
export interface PictureProps {
  adjuster: Adjuster;
  from: Position;
  to: Position;
  corner: Corner;
  /** How its figures are written. */
  units?: ShopUnits | undefined;
  /** What the pack holds, where that is known, and what it is to hold; without the latter its thickness is drawn plain. */
  stackFrom?: readonly ShimCount[];
  stackTo?: readonly ShimCount[];
}

/** The same move in large figures. `unit` follows `to`. */
export interface PictureWords {
  readonly from: string;
  readonly to: string;
  readonly unit?: string;
  /** The way, for the title and for lists. A card does not print it: the move's instruction says it. */
  readonly note: string;
  /** What neither the figures nor the instruction say; printed beneath the figures. */
  readonly also?: string;
}

/** One adjuster kind, drawn. */
export interface AdjusterPicture {
  readonly Picture: FunctionComponent<PictureProps>;
  readonly words: (props: PictureProps) => PictureWords;
  /** Stands above its words and not beside them. */
  readonly wide?: boolean;
  /** As it is looked at where it stands. Absent: that is typed. */
  readonly face?: (adjuster: Adjuster) => AdjusterFace;
}

interface FrameProps {
  width: number;
  height: number;
  title: string;
  children: ComponentChildren;
}

/** An inline drawing with words for those who do not see it. */
export function Frame({ width, height, title, children }: FrameProps) {
  return (
    <svg class="picture" viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img">
      <title>{title}</title>
      {children}
    </svg>
  );
}

/** A point on a circle, angle in degrees clockwise from the top. */
export function around(angle: number, radius: number): readonly [x: number, y: number] {
  const a = (angle * Math.PI) / 180;
  const tidy = (x: number) => Math.round(x * 100) / 100;
  return [tidy(radius * Math.sin(a)), tidy(-radius * Math.cos(a))];
}

/** A number with its sign, as scales are marked. */
export const signed = (x: number, units?: ShopUnits, decimals = 3): string =>
  `${x > 0 ? '+' : ''}${figure(x, units, decimals)}`;

interface StraightArrowProps {
  from: readonly [x: number, y: number];
  to: readonly [x: number, y: number];
}

/** Arrows shorter than this, px, cannot be seen from two metres: the tail of a short one starts behind its mark. */
const SHORTEST = 24;

/** A line with its head at `to`. Nothing where nothing moves. */
export function StraightArrow({ from: [x0, y0], to: [x1, y1] }: StraightArrowProps) {
  const length = Math.hypot(x1 - x0, y1 - y0);
  if (length === 0) return null;
  const angle = (Math.atan2(y1 - y0, x1 - x0) * 180) / Math.PI;
  return (
    <g class="picture-arrow" transform={`translate(${x1} ${y1}) rotate(${angle})`}>
      <path d={`M${-Math.max(SHORTEST, length)} 0H-11`} />
      <path class="picture-head" d="M0 0l-11-6v12z" />
    </g>
  );
}

interface TurnArrowProps {
  /** Degrees clockwise from the top. */
  from: number;
  to: number;
  radius: number;
}

/** An arc about the origin with its head at `to`. Nothing where nothing turns. */
export function TurnArrow({ from, to, radius }: TurnArrowProps) {
  const way = Math.sign(to - from);
  if (way === 0) return null;
  const long = (px: number) => (px / radius) * (180 / Math.PI);
  const tail = to - way * Math.max(long(SHORTEST), Math.abs(to - from));
  // The head is about 11 px long: the arc stops at its foot.
  const foot = to - way * long(11);
  const [x0, y0] = around(tail, radius);
  const [x1, y1] = around(foot, radius);
  const large = Math.abs(foot - tail) > 180 ? 1 : 0;
  const tip = around(to, radius).join(' ');
  const outer = around(foot, radius + 6).join(' ');
  const inner = around(foot, radius - 6).join(' ');
  return (
    <g class="picture-arrow">
      <path d={`M${x0} ${y0}A${radius} ${radius} 0 ${large} ${way > 0 ? 1 : 0} ${x1} ${y1}`} />
      <path class="picture-head" d={`M${tip}L${outer}L${inner}z`} />
    </g>
  );
}
