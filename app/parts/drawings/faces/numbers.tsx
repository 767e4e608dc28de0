import { Body } from '../indexed-cam.tsx';
import { around } from '../picture.tsx';
import type { AdjusterFace, FaceProps, Mark } from './face.ts';

const RADIUS = 88;
const MIDDLE = [150, 122] as const;
/** More numbers than this are not told apart. */
const MOST = 40;

/** Degrees clockwise from the notch at which a number is, with the cam as it stands. */
function turned({ positions, position }: FaceProps): (place: number) => number {
  const step = 360 / (positions.length || 1);
  const up = Math.max(0, positions.map(String).indexOf(String(position)));
  return (place) => (place - up) * step;
}

const ringOf = ({ positions }: FaceProps): number => RADIUS - (positions.length > 12 ? 14 : 22);

function marks(props: FaceProps): readonly Mark[] {
  const at = turned(props);
  return props.positions.map((position, i) => {
    const [x, y] = around(at(i), ringOf(props));
    return { position, x: MIDDLE[0] + x, y: MIDDLE[1] + y };
  });
}

/** The cam as it stands on the car: the number at the notch is up. */
function Drawing(props: FaceProps) {
  const { positions, position, unknown } = props;
  const at = turned(props);
  const count = positions.length;
  const every = Math.ceil(count / MOST);
  const size = count > 24 ? 13 : count > 12 ? 17 : 24;
  return (
    <g transform={`translate(${MIDDLE.join(' ')})`}>
      <path class="picture-ink" d={`M0 ${-RADIUS - 2}l-9-16h18z`} />
      <g transform={`rotate(${at(0)})`}>
        <Body faces={count} step={360 / (count || 1)} radius={RADIUS} />
        <circle class="cam-hole" cy="-11" r="17" />
      </g>
      {positions.map((one, i) => {
        const up = String(one) === String(position) && !unknown;
        if (!up && i % every > 0) return null;
        const [x, y] = around(at(i), ringOf(props));
        return (
          <text
            key={one}
            class={up ? 'cam-to' : 'cam-label'}
            font-size={up ? size + 8 : size}
            x={x}
            y={y}
            dy=".36em"
            text-anchor="middle"
          >
            {one}
          </text>
        );
      })}
      <circle class="picture-ink" r="3" />
    </g>
  );
}

export const numberFace: AdjusterFace = {
  width: 300,
  height: 216,
  marks,
  Drawing,
  says: () => 'touch the number that is at the notch',
};
