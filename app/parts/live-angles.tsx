/** Which angles a rack shows while something is turned: one touch each, and one for none. */
import type { LiveAngle } from '../../core/contract.ts';

interface Props {
  readonly legend: string;
  readonly angles: readonly LiveAngle[];
  readonly onChoose: (angles: readonly LiveAngle[]) => void;
}

/** The usual ones first. */
const ORDER: readonly LiveAngle[] = ['camber', 'toe', 'caster'];

export function LiveAngles({ legend, angles, onChoose }: Props) {
  const turned = (angle: LiveAngle) =>
    angles.includes(angle) ? angles.filter((one) => one !== angle) : [...angles, angle];
  return (
    <fieldset class="choice live-angles">
      <legend>{legend}</legend>
      {ORDER.map((angle) => (
        <button key={angle} type="button" aria-pressed={angles.includes(angle)} onClick={() => onChoose(turned(angle))}>
          {angle}
        </button>
      ))}
      <button type="button" aria-pressed={angles.length === 0} onClick={() => onChoose([])}>
        nothing
      </button>
    </fieldset>
  );
}
