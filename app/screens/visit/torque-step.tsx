/** Torque at ride height, before the car goes: ticked job by job or at once, and asked about where it is not. */
import { signal } from '@preact/signals';
import { signOff } from '../../state/sign-off.ts';
import { choice, choose } from '../../state/stage.ts';
import { type Torque, torquesOf, untorquedOf } from '../../state/torque.ts';
import type { VisitView } from '../../state/visits.ts';

interface Props {
  readonly view: VisitView;
}

const tick = (view: VisitView, torques: readonly Torque[], on: boolean): void =>
  choose(view.visit.id, Object.fromEntries(torques.flatMap(({ keys }) => keys.map((key) => [key, on ? 'yes' : '']))));

export function TorqueStep({ view }: Props) {
  const torques = torquesOf(view);
  if (torques.length === 0) return null;
  const open = untorquedOf(view);
  return (
    <fieldset class="ticks">
      <legend>Torque, the car settled at ride height</legend>
      {torques.map((torque) => (
        <label key={torque.name}>
          <input
            type="checkbox"
            checked={torque.keys.every((key) => choice(view.visit.id, key) === 'yes')}
            onChange={(event) => tick(view, [torque], event.currentTarget.checked)}
          />
          <span>
            {torque.name}: <FigureText figures={torque.figures} />
          </span>
        </label>
      ))}
      {open.length > 1 && (
        <button type="button" class="quiet wide" onClick={() => tick(view, open, true)}>
          All {torques.length} are torqued
        </button>
      )}
    </fieldset>
  );
}

/** The user's own figure, or that there is none. */
export function FigureText({ figures }: Pick<Torque, 'figures'>) {
  if (figures.length === 0) return <>the maker’s figure; none on file for this car</>;
  return (
    <>
      maker’s figure, yours on file: <strong>{figures.join('; ')}</strong>
    </>
  );
}

/** The visit whose sign-off asks about torque. */
const asking = signal<string | undefined>(undefined);

/** Signs off, or first asks once about what is not ticked. */
export function trySignOff(view: VisitView): void {
  if (untorquedOf(view).length > 0) asking.value = view.visit.id;
  else signOff(view);
}

export const asksTorque = ({ visit }: VisitView): boolean => asking.value === visit.id;

export function TorqueQuestion({ view }: Props) {
  const open = untorquedOf(view);
  const keys = open.flatMap((torque) => torque.keys);
  const done = (...untorqued: readonly string[]) => {
    asking.value = undefined;
    signOff(view, untorqued);
  };
  const answers = [
    ['Back', () => (asking.value = undefined)],
    [
      open.length > 1 ? 'They are torqued' : 'It is torqued',
      () => {
        tick(view, open, true);
        done();
      },
    ],
    ['Not torqued: sign off', () => done(...keys)],
  ] as const;
  return (
    <section class="dock which" aria-label="Not ticked as torqued" role="alertdialog">
      <p class="stepper-caption">
        Not ticked as torqued: <strong>{open.map(({ name }) => name).join('; ')}</strong>. Signed off so, the sheet says
        it for good.
      </p>
      <div class="stepper-actions">
        {answers.map(([label, onPress]) => (
          <button key={label} type="button" class="action-bar-secondary" onClick={onPress}>
            {label}
          </button>
        ))}
      </div>
    </section>
  );
}
