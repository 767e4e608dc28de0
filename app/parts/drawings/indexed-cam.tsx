import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { around, Frame } from './picture.tsx';

const RADIUS = 66;
/** With more faces a polygon cannot be told from a disc; with fewer its corners stick out of the drawing. */
const MOST_FACES = 16;
const LEAST_FACES = 5;

const labelsOf = ({ adjuster }: PictureProps): string[] =>
  ((adjuster.positions ?? []) as readonly { label: string }[]).map(({ label }) => label);

/**
 * The cam as it is to sit: its new number up at the notch, the old one ringed. Which way round its numbers are stamped is not
 * on file, and either way comes to the notch: no arrow, nothing that turns.
 */
function Picture(props: PictureProps) {
  const labels = labelsOf(props);
  const from = String(props.from);
  const to = String(props.to);
  const step = 360 / (labels.length || 1);
  const rest = -labels.indexOf(to) * step;
  const every = Math.ceil(labels.length / MOST_FACES);
  const size = labels.length > 12 ? 11 : labels.length > 9 ? 13 : 16;
  return (
    <Frame width={168} height={170} title={`Numbered cam, turned from ${from} to ${to}: ${to} is up at the notch`}>
      <g transform="translate(84 90)">
        <path class="picture-ink" d={`M0 ${-RADIUS - 1}l-7-12h14z`} />
        <g transform={`rotate(${rest})`}>
          <Body faces={labels.length} step={step} />
          <circle class="cam-hole" cx="0" cy="-9" r="13" />
        </g>
        {labels.map((label, i) => {
          if (label !== from && label !== to && i % every > 0) return null;
          const [x, y] = around(rest + i * step, RADIUS - 15);
          const role = label === to ? 'cam-to' : label === from ? 'cam-from' : 'cam-label';
          return (
            <g key={label} transform={`translate(${x} ${y})`}>
              {role === 'cam-from' && <circle class="cam-ring" r="11" />}
              <text class={role} font-size={label === to ? size + 4 : size} text-anchor="middle" dy=".36em">
                {label}
              </text>
            </g>
          );
        })}
        <circle class="picture-ink" r="3" />
      </g>
    </Frame>
  );
}

/** As many faces as it has numbers, while these are told apart. */
export function Body({ faces, step, radius = RADIUS }: { faces: number; step: number; radius?: number }) {
  if (faces < LEAST_FACES || faces > MOST_FACES) return <circle class="picture-body" r={radius} />;
  const corner = radius / Math.cos((step * Math.PI) / 360);
  const points = Array.from({ length: faces }, (_, i) => around((i + 0.5) * step, corner).join(','));
  return <polygon class="picture-body" points={points.join(' ')} />;
}

export const indexedCam: AdjusterPicture = {
  Picture,
  words: ({ from, to }) => ({
    from: String(from),
    to: String(to),
    note: from === to ? 'stays as it is' : 'both faces, number up to the notch',
  }),
};
