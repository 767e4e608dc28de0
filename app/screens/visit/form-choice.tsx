/** What the rack gives: toe of each wheel or the axle's total and against what, SAI or not, how things stand. */
import { hashOf } from '../../routes.ts';
import { canTotal, hasSai, isOnLinks } from '../../state/fields.ts';
import { measuredWith } from '../../state/methods.ts';
import { changeForm, entryForm, typedRecord } from '../../state/visit-actions.ts';
import type { VisitView } from '../../state/visits.ts';
import { FrontToe } from './front-toe.tsx';
import { RackChoice } from './rack-choice.tsx';

export function FormChoice({ view }: { readonly view: VisitView }) {
  const { car } = view.car;
  const { sai, total, axle = false, wheel = false, heights = false } = entryForm(view);
  const front = canTotal(car, 'front')
    ? `Steering wheel ${wheel ? 'as it stood' : 'clamped straight'}`
    : 'Front toe of each wheel';
  return (
    <>
      <a class="quiet wide" href={hashOf({ screen: 'bench', tool: '', visit: view.visit.id })}>
        Measure with what I have
      </a>
      <FromBench view={view} />
      <RackChoice view={view} />
      {!total && <FrontToe view={view} />}
      <fieldset class="choice">
        <legend>Toe</legend>
        <button type="button" aria-pressed={!total} onClick={() => changeForm(view, { total: false })}>
          each wheel
        </button>
        <button type="button" aria-pressed={total} onClick={() => changeForm(view, { total: true })}>
          axle total
        </button>
      </fieldset>
      {total && <p class="soft">{front}, rear taken as straight: each wheel has half of its total.</p>}
      {car.front.steered && (
        <Too
          label="Steering wheel not level while you read"
          on={wheel}
          onChange={(wheel) => changeForm(view, { wheel })}
        />
      )}
      {car.front.steered && wheel && <p class="soft">{wheelText(car.steeringRatio)}</p>}
      <Too
        label="Ride heights too, before the angles"
        on={heights}
        onChange={(heights) => changeForm(view, { heights })}
      />
      {hasSai(car) && <Too label="SAI too" on={sai} onChange={(sai) => changeForm(view, { sai })} />}
      {[car.front, car.rear].some(isOnLinks) && (
        <Too label="Pinion and axle’s place too" on={axle} onChange={(axle) => changeForm(view, { axle })} />
      )}
    </>
  );
}

/** Figures of this entry that the bench brought, and how sure they are. */
function FromBench({ view }: { readonly view: VisitView }) {
  const { reading } = typedRecord(view, {});
  const brought = measuredWith(reading);
  if (brought.length === 0) return null;
  return <p class="soft">From the bench: {brought.join('; ')}. A figure that is typed over is the rack’s.</p>;
}

function wheelText(ratio: number | undefined): string {
  const roll =
    'Roll the car in straight, leave the wheel as it stands, and type by how many degrees it is off: + to the right.';
  return ratio === undefined
    ? `${roll} To put it straight the plan needs the steering ratio: type that on the car’s build card.`
    : `${roll} The plan puts it straight with the rods.`;
}

interface TooProps {
  readonly label: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}

function Too({ label, on, onChange }: TooProps) {
  return (
    <label class="torque">
      <input
        type="checkbox"
        checked={on}
        onChange={(event) => {
          // The next digits are for a cell, not for this.
          event.currentTarget.blur();
          onChange(event.currentTarget.checked);
        }}
      />
      <span>{label}</span>
    </label>
  );
}
