import { FLATS, inFlats } from '../../../core/units/flats.ts';
import { inQuarters } from '../../../core/units/fractions.ts';
import { figure, lengthText, type ShopUnits } from '../../../core/units/shop.ts';
import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { around, Frame } from './picture.tsx';

const NUT = 27;

/** The rod from the side with the way it grows, and its nut from the end with the flats to count. */
function Picture(props: PictureProps) {
  const change = Number(props.to) - Number(props.from);
  const { note, to } = words(props);
  return (
    <Frame width={304} height={100} title={`Threaded rod: ${to} ${note}`}>
      <g transform="translate(14 44)">
        <Rod />
        {change !== 0 && (
          <>
            <Push x={2} way={change > 0 ? -1 : 1} />
            <Push x={182} way={change > 0 ? 1 : -1} />
          </>
        )}
      </g>
      <g transform="translate(260 48)">
        <Nut turns={change} units={props.units} />
      </g>
    </Frame>
  );
}

/** Two threaded ends in a six-sided sleeve, a lock nut against each face. */
function Rod() {
  const thread = (x: number) => Array.from({ length: 6 }, (_, i) => `M${x + i * 6} 9l4-18`).join('');
  return (
    <>
      <circle class="picture-body" cx="13" r="12" />
      <circle class="cam-hole" cx="13" r="5" />
      <path class="picture-body" d="M25-7h50v14H25zM117-7h50v14h-50z" />
      <path class="picture-line" d={`${thread(33)}${thread(121)}`} />
      <circle class="picture-body" cx="179" r="12" />
      <circle class="cam-hole" cx="179" r="5" />
      <path class="picture-body" d="M66-13h9v26h-9zM117-13h9v26h-9z" />
      <path class="picture-bolt" d="M75-16h42v32H75z" />
      <path class="picture-line" d="M75-6h42M75 6h42" />
    </>
  );
}

/** An arrow under the rod's end, pointing outward (−1 left, +1 right) or back in. */
function Push({ x, way }: { x: number; way: 1 | -1 }) {
  return (
    <g class="picture-arrow rod-push" style={{ '--push': `${-8 * way}px` }}>
      <path d={`M${x - 11 * way} 34h${16 * way}`} />
      <path class="picture-head" d={`M${x + 14 * way} 34l${-11 * way}-7v14z`} />
    </g>
  );
}

/** The nut's end: the flats to turn in accent and counted, whole turns as a ring with their number inside. */
function Nut({ turns, units }: Pick<PictureProps, 'units'> & { turns: number }) {
  const { whole, flats } = inFlats(turns);
  const corner = (i: number, radius: number) => around(i * 60 - 30, radius);
  const sides = Array.from({ length: FLATS }, (_, i) => {
    const [x, y] = corner(i, NUT);
    const [x1, y1] = corner(i + 1, NUT);
    const part = Math.min(1, Math.max(0, flats - i));
    return { i, part, d: `M${x} ${y}L${x + (x1 - x) * part} ${y + (y1 - y) * part}` };
  });
  return (
    <>
      {whole > 0 && <circle class="rod-turn" r="41" />}
      <polygon class="picture-bolt" points={sides.map(({ i }) => corner(i, NUT).join(',')).join(' ')} />
      {sides.map(({ i, part, d }) => {
        const [x, y] = around(i * 60, NUT + 6);
        return (
          part > 0 && (
            <g key={i}>
              <path class="rod-flat" d={d} />
              <text class="rod-count" x={x} y={y} dy=".36em" text-anchor="middle">
                {part === 0.5 ? '½' : figure(part === 1 ? i + 1 : part, units, 2)}
              </text>
            </g>
          )
        );
      })}
      <text class="rod-whole" text-anchor="middle" dy=".36em">
        {whole > 0 ? `${whole}×` : ''}
      </text>
    </>
  );
}

/** Halves and quarters as such: the sentence below the drawing counts them so. */
const counted = (flats: number, units?: ShopUnits): string =>
  Number.isInteger(flats * 4) ? inQuarters(flats) : figure(flats, units, 2);

function words({ adjuster, from, to, units }: PictureProps) {
  const change = Number(to) - Number(from);
  const { whole, flats } = inFlats(change);
  const count = [
    whole > 0 && `${whole} turn${whole === 1 ? '' : 's'}`,
    flats > 0 && `${counted(flats, units)} flat${flats <= 1 ? '' : 's'}`,
  ].filter(Boolean);
  const length = lengthText(Number((Math.abs(change) * (adjuster.lead ?? 0)).toFixed(2)), units);
  const turned = count.join(' ') || '0 turns';
  if (change === 0) return { from: '', to: turned, note: 'stays as it is' };
  const unit = change > 0 ? 'longer' : 'shorter';
  return { from: '', to: turned, unit, note: `${unit}, by ${length}` };
}

export const threadedRod: AdjusterPicture = { Picture, words, wide: true };
