import type { Vec3 } from '../../core/contract.ts';
import { wordsOf } from '../../core/words/catalogue.ts';
import { suspensionPictures } from './drawings/suspension-catalogue.ts';
import type { Place, SuspensionPicture } from './drawings/suspension-picture.ts';

export interface SuspensionDrawingProps {
  kind: string;
  /** One point to ring and name, or the two ends of a length. */
  highlight?: string | readonly string[];
  /** Measured points, mm, corner frame; what is absent comes from a made-up corner of the same kind. */
  points?: Readonly<Record<string, Vec3 | undefined>>;
  /** One view alone, as large as there is room: the one that shows the ringed ends furthest apart. */
  close?: boolean;
  /** A point was tapped. */
  onPick?: ((point: string) => void) | undefined;
}

type Flat = readonly [x: number, y: number];
/** One way of looking: which two coordinates go right and up. */
interface View {
  readonly says: string;
  readonly flat: (point: Vec3) => Flat;
}

const views: readonly View[] = [
  { says: 'from the front', flat: ([, y, z]) => [y, z] },
  { says: 'from above', flat: ([x, y]) => [y, x] },
];
/** With both wheels in sight it counts where one stands: in front of the car, for the one view as for the other. */
const ofAxle: readonly View[] = [views[0]!, { says: 'from above, the car’s front below', flat: ([x, y]) => [y, -x] }];
const PANEL = 150;
const GAP = 20;
/** Room for what a view is. */
const BELOW = 18;
/** Of a view of the whole axle. */
const WIDE = { width: 2 * PANEL + GAP, height: 128 };
const TYRE = 205;
/** Of one view alone. */
const CLOSE = { width: 2 * PANEL + GAP, height: 220 };
/** How much of a panel the corner fills: a ring about its outermost point has room, too. */
const FILL = 0.88;

/** A corner from the front and from above, at one scale, with the point that is being typed ringed and named. */
export function SuspensionDrawing({
  kind,
  highlight = [],
  points = {},
  close = false,
  onPick,
}: SuspensionDrawingProps) {
  const picture = suspensionPictures[kind];
  if (!picture) return null;
  if (picture.Sheet)
    return (
      <figure class="suspension">
        <picture.Sheet />
      </figure>
    );
  const ringed = typeof highlight === 'string' ? [highlight] : highlight;
  const all = placed(picture, points);
  const both = picture.wholeAxle ? ofAxle : views;
  const shown = close ? [clearest(both, ringed, all)] : both;
  const panel = picture.wholeAxle ? WIDE : close ? CLOSE : { width: PANEL, height: PANEL };
  const scale = Math.min(
    ...shown.map((view) => {
      const { size } = extent(view, picture, all);
      return Math.min(panel.width / size[0], panel.height / size[1]);
    }),
  );
  const height = (picture.wholeAxle ? shown.length : 1) * (panel.height + BELOW);
  const place = (i: number) =>
    picture.wholeAxle ? `translate(0 ${i * (panel.height + BELOW)})` : `translate(${i * (PANEL + GAP)} 0)`;
  const names = ringed.map(wordsOf().point).join(' to ');
  return (
    <figure class="suspension">
      <svg viewBox={`0 0 ${WIDE.width} ${height}`} width="100%" role="img">
        <title>{names ? `${picture.name}: ${names}` : picture.name}</title>
        {shown.map((view, i) => (
          <g key={view.says} transform={place(i)}>
            <Panel
              view={view}
              picture={picture}
              points={all}
              size={panel}
              scale={scale}
              ringed={ringed}
              onPick={onPick}
            />
          </g>
        ))}
      </svg>
      {names && <figcaption>{names}</figcaption>}
    </figure>
  );
}

type Points = Readonly<Record<string, Vec3>>;

/** The view in which two points lie furthest apart; of one point, the first. */
function clearest(all: readonly View[], [from, to]: readonly string[], points: Points): View {
  const [a, b] = [points[from ?? ''], points[to ?? '']];
  if (!a || !b) return all[0]!;
  const apart = ({ flat }: View): number => Math.hypot(flat(a)[0] - flat(b)[0], flat(a)[1] - flat(b)[1]);
  return [...all].sort((one, other) => apart(other) - apart(one))[0]!;
}

/** The made-up corner with the measured points in place of its own, where they are numbers. */
function placed(picture: SuspensionPicture, points: SuspensionDrawingProps['points'] = {}): Points {
  const known = Object.entries(points).filter(([, p]) => p?.every(Number.isFinite)) as [string, Vec3][];
  return { ...picture.points, ...Object.fromEntries(known.filter(([name]) => name in picture.points)) };
}

const hubOf = (points: Points): Vec3 => points.wheelCentre ?? [0, 770, 320];

/** The tyres' outlines in a view: as wide as a tyre, as high or long as the wheel centre is off the ground. */
const tyres = (view: View, { wholeAxle }: SuspensionPicture, points: Points) => {
  const [x, y, z] = hubOf(points);
  return [tyre(view, [x, y, z]), ...(wholeAxle ? [tyre(view, [x, -y, z])] : [])];
};

function tyre(view: View, [x, y, z]: Vec3): { from: Flat; to: Flat } {
  const radius = Math.max(z, TYRE);
  return {
    from: view.flat([x - radius, y - TYRE / 2, z - radius]),
    to: view.flat([x + radius, y + TYRE / 2, z + radius]),
  };
}

function extent(view: View, picture: SuspensionPicture, points: Points): { middle: Flat; size: Flat } {
  const wheels = tyres(view, picture, points).flatMap(({ from, to }) => [from, to]);
  const places = (picture.solid ?? []).flat().filter((place) => typeof place !== 'string');
  const flat = [...[...Object.values(points), ...places].map(view.flat), ...wheels];
  const low = [0, 1].map((i) => Math.min(...flat.map((p) => p[i] ?? 0))) as [number, number];
  const high = [0, 1].map((i) => Math.max(...flat.map((p) => p[i] ?? 0))) as [number, number];
  return {
    middle: [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2],
    size: [Math.max(high[0] - low[0], 1), Math.max(high[1] - low[1], 1)],
  };
}

interface PanelProps {
  view: View;
  picture: SuspensionPicture;
  points: Points;
  size: { readonly width: number; readonly height: number };
  scale: number;
  ringed: readonly string[];
  onPick?: ((point: string) => void) | undefined;
}

/** px, of the drawing, about a point within which a thumb means it. */
const NEAR = 26;

function Panel({ view, picture, points, size, scale, ringed, onPick }: PanelProps) {
  const { middle } = extent(view, picture, points);
  const on = ([right, up]: Flat): Flat => [
    Math.round((size.width / 2 + (right - middle[0]) * scale * FILL) * 10) / 10,
    Math.round((size.height / 2 - (up - middle[1]) * scale * FILL) * 10) / 10,
  ];
  const at = (place: Place): Flat =>
    on(view.flat(typeof place === 'string' ? (points[place] ?? hubOf(points)) : place));
  const path = (...places: readonly Place[]) => `M${places.map((place) => at(place).join(' ')).join('L')}`;
  const [from, to] = ringed;
  // The nearest one is meant: some lie so close that none could be hit alone.
  const pick = (event: MouseEvent) => {
    const matrix = (event.currentTarget as SVGGraphicsElement).getScreenCTM();
    if (!onPick || !matrix) return;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const far = (name: string): number => Math.hypot(at(name)[0] - x, at(name)[1] - y);
    const nearest = Object.keys(points).sort((a, b) => far(a) - far(b))[0];
    if (nearest !== undefined && far(nearest) < NEAR) onPick(nearest);
  };
  return (
    <>
      {tyres(view, picture, points).map(({ from: low, to: high }) => {
        const [[left, bottom], [right, top]] = [on(low), on(high)];
        const height = Math.abs(bottom - top);
        return (
          <rect
            class="suspension-tyre"
            x={left}
            y={Math.min(top, bottom)}
            width={right - left}
            height={height}
            rx="9"
            key={left}
          />
        );
      })}
      <path class="suspension-upright" d={picture.upright.map((name) => path('wheelCentre', name)).join('')} />
      <path
        class="suspension-link"
        d={[...picture.links, ...(picture.solid ?? [])].map((places) => path(...places)).join('')}
      />
      {from && to && <path class="suspension-length" d={path(from, to)} />}
      {Object.keys(points).map((name) => (
        <circle key={name} class="suspension-point" cx={at(name)[0]} cy={at(name)[1]} r="3" />
      ))}
      {ringed
        .filter((name) => name in points)
        .map((name) => (
          <circle key={name} class="suspension-ring" cx={at(name)[0]} cy={at(name)[1]} r="7.5" />
        ))}
      {onPick && (
        // Each point has a field with its name below: the drawing is a short way for the thumb.
        // biome-ignore lint/a11y/noStaticElementInteractions: the fields themselves are the way of the keyboard.
        <rect class="suspension-pick" width={size.width} height={size.height} onClick={pick} />
      )}
      <text class="suspension-view" x={size.width / 2} y={size.height + 14} text-anchor="middle">
        {view.says}
      </text>
    </>
  );
}
