/** The layouts of an axle, and what adjusts it, to be picked by their pictures. */
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import type { AxleName } from '../../../core/contract.ts';
import { type Fitment, fitmentsFor } from '../../../core/starters/fitments.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { adjusterPictures } from '../../parts/drawings/catalogue.ts';
import { SuspensionDrawing } from '../../parts/suspension-drawing.tsx';
import { draft } from '../../state/records.ts';
import { type Form, formDraft } from './form.ts';
import { ImportButton } from './import.tsx';
import { cardUnits } from './numbers.ts';
import { fitted, fittedOn, LAYOUTS, layoutOf, picked } from './start-texts.ts';

interface AxleProps {
  readonly form: Form;
  readonly axle: AxleName;
}

/** One touch picks it and goes on. */
export function Layouts({ form, axle, onPicked }: AxleProps & { readonly onPicked: () => void }) {
  const chosen = layoutOf(form.texts, axle);
  const pick = (kind: string) => {
    if (kind !== chosen) form.replace(`car.${axle}.`, picked(form.texts, axle, kind));
    onPicked();
  };
  return (
    <>
      <fieldset class="kinds">
        <legend class="visually-hidden">Layout of the {axle} axle</legend>
        {LAYOUTS[axle].map((kind) => {
          const name = suspensionKinds[kind]?.name ?? kind;
          return (
            <button
              key={kind}
              type="button"
              class="kind"
              aria-label={name}
              aria-pressed={chosen === kind}
              onClick={() => pick(kind)}
            >
              <SuspensionDrawing kind={kind} />
              {name}
            </button>
          );
        })}
      </fieldset>
      {axle === 'front' && !draft(formDraft(form.id)) && <ImportButton />}
    </>
  );
}

export function Adjusters({ form, axle }: AxleProps) {
  const kind = layoutOf(form.texts, axle);
  if (!kind) return <p class="soft">Pick the {axle} axle first.</p>;
  const on = fittedOn(form.texts, axle);
  const pick = (one: Fitment) => form.replace(`car.${axle}.adjusters[`, fitted(form.texts, axle, one));
  return (
    <>
      <p class="soft">All that this axle has; both sides are taken to be alike. What it has not, leave.</p>
      <fieldset class="kinds">
        <legend class="visually-hidden">Adjusters of the {axle} axle</legend>
        {fitmentsFor(kind, axle).map((one) => (
          <button
            key={one.id}
            type="button"
            class="kind"
            aria-label={one.name}
            aria-pressed={on.includes(one.id)}
            onClick={() => pick(one)}
          >
            <Where kind={kind} fitment={one} />
            <Picture fitment={one} />
            {one.name}
          </button>
        ))}
      </fieldset>
      <p class="soft">
        Throws, pitches and thicknesses are those that most have; the card has them to look up and change, and more
        adjusters: numbered cams, a kit’s chart.
      </p>
    </>
  );
}

/** Where on the axle it is: what it moves ringed. */
function Where({ kind, fitment }: { readonly kind: string; readonly fitment: Fitment }) {
  const held = suspensionKinds[kind];
  const ringed = fitment.adjusters.flatMap((adjuster) => {
    const { points = [], links = [], line, seats = [] } = adjusterKinds[adjuster.kind]?.touches(adjuster) ?? {};
    const ends = held?.links?.filter(([inner]) => links.includes(inner)).flat() ?? [];
    return [...points, ...ends, ...seats.slice(0, 1), ...(line ? (held?.lines?.flat() ?? []) : [])];
  });
  return <SuspensionDrawing kind={kind} highlight={ringed.length > 0 ? ringed : ['wheelCentre']} />;
}

function Picture({ fitment }: { readonly fitment: Fitment }) {
  const [adjuster] = fitment.adjusters;
  const picture = adjusterPictures[adjuster?.kind ?? ''];
  const kind = adjusterKinds[adjuster?.kind ?? ''];
  if (!adjuster || !picture || !kind) return null;
  const { from, to } = kind.step(adjuster);
  return <picture.Picture adjuster={adjuster} from={from} to={to} corner="LF" units={cardUnits()} />;
}
