/** The front view of a wheel with its steering axis: what leans, and what keeps it. Not to scale: it shows which way. */
import type { Level, Suspect } from '../../../../core/said.ts';
import { Frame } from '../picture.tsx';
import { Floor, Word } from './strokes.tsx';

interface Props {
  readonly camber?: Level;
  readonly sai?: Level;
  readonly look?: Suspect;
}

const lean = (level: Level | undefined): number => (level === 'high' ? 1 : level === 'low' ? -1 : 0);
/** Where of the drawing a suspect is: its ring. */
const PLACES: Readonly<Partial<Record<Suspect, readonly (readonly [number, number])[]>>> = {
  'knuckle-or-spindle': [[150, 104]],
  'knuckle-or-strut': [[150, 96]],
  spindle: [[136, 104]],
  'moved-pivot': [
    [236, 60],
    [236, 148],
  ],
  'lower-arm': [[206, 148]],
  'upper-arm': [[214, 60]],
  'tower-in': [[182, 40]],
  'lower-arm-or-tower-out': [
    [206, 148],
    [182, 40],
  ],
  'tower-and-knuckle-or-strut': [
    [182, 40],
    [150, 104],
  ],
  'axle-beam': [[220, 148]],
  subframe: [[270, 148]],
  'wheel-moved-back': [[206, 148]],
  'steering-arm': [[160, 122]],
};

/** A left wheel from the front, as it is (ink) beside how it should be (dashed), the suspect ringed. */
export function BentDrawing({ camber, sai, look }: Props) {
  const [leans, axis] = [-8 * lean(camber), -8 * lean(sai)];
  return (
    <Frame
      width={320}
      height={196}
      title="A wheel from the front with its steering axis: as it is, and dashed as it should be"
    >
      <Floor y={184} />
      <g transform="translate(84 104)">
        <rect class="bench-dashed" x="-24" y="-80" width="48" height="160" rx="14" />
        <rect class="picture-body" x="-24" y="-80" width="48" height="160" rx="14" transform={`rotate(${leans})`} />
      </g>
      <path class="picture-line" d="M108 104H150" />
      <g transform="translate(160 148)">
        <path class="bench-dashed" d="M0 0L20-110" />
        <path class="bench-rod" d="M0 0L20-110" transform={`rotate(${-axis})`} />
      </g>
      <path class="picture-line" d="M160 148L252 148M172 62L252 60" />
      <path class="picture-body" d="M252 50h36v108h-36z" />
      {look && PLACES[look]?.map(([x, y]) => <circle key={`${x} ${y}`} class="bench-ring" cx={x} cy={y} r="22" />)}
      <Word at={[84, 16]}>camber{camber && camber !== 'ok' ? ` ${camber}` : ''}</Word>
      <Word at={[200, 28]}>SAI{sai && sai !== 'ok' ? ` ${sai}` : ''}</Word>
    </Frame>
  );
}
