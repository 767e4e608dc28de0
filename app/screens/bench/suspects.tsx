/** What the figures point to: each where to look, with the reason drawn; into the visit in one touch. */
import type { CarSettings, Reading, Spec } from '../../../core/contract.ts';
import { isAxle } from '../../../core/corners.ts';
import type { BentMeasures, ToldHint } from '../../../core/index.ts';
import { engine } from '../../engine/index.ts';
import { Card } from '../../parts/card.tsx';
import { BentDrawing } from '../../parts/drawings/bench/bent.tsx';
import {
  Leaning,
  leaningOf,
  pointingOf,
  RearToe,
  Turns,
  WheelMovedBack,
} from '../../parts/drawings/bench/bent-above.tsx';
import { useAsked } from '../../state/asking.ts';
import { unknownAtReading } from '../../state/unknown-places.ts';
import { lookOf, noteLook } from '../../state/visit-notes.ts';
import type { VisitView } from '../../state/visits.ts';
import { why } from '../../state/why.ts';
import { words } from '../../state/words.ts';
import type { At } from './tool.ts';

interface SuspectsProps {
  readonly reading: Reading;
  readonly spec: Spec;
  readonly measures: BentMeasures;
  readonly kind: string;
  readonly view: VisitView | undefined;
  readonly at: At;
}

export function Suspects({ reading, spec, measures, kind, view, at }: SuspectsProps) {
  const first = view?.rounds[0];
  const settings: CarSettings | undefined = first?.record.settings;
  const options = view
    ? { car: view.car.car, ...(settings && { settings }), ...(first && { unknown: unknownAtReading(view, first) }) }
    : { kinds: { front: kind } };
  const asked = [reading, spec, measures, options] as const;
  const { value, error } = useAsked(`bent ${JSON.stringify(asked)}`, (signal) =>
    engine.call('whatIsBent', [...asked], { signal }),
  );
  if (error)
    return (
      <p role="alert" class="wrong">
        {why(error)}
      </p>
    );
  if (!value) return <p class="soft">Working it out…</p>;
  if (value.length === 0) return <p>Nothing of these figures points to a bent part.</p>;
  return (
    <>
      {value.map((hint) => (
        <Suspicion key={JSON.stringify(hint)} hint={hint} at={at} />
      ))}
      {view && <p class="soft">What the adjusters themselves do is taken out first.</p>}
      {view && !view.visit.closed && <Note view={view} text={value.map((hint) => placed(hint, at)).join(' ')} />}
    </>
  );
}

const nameOf = ({ where }: ToldHint): string =>
  isAxle(where) ? `${where === 'front' ? 'Front' : 'Rear'} axle` : where;
const placed = (hint: ToldHint, at: At): string => `${nameOf(hint)}: ${words.hint(hint, at.units)}`;

function Note({ view: { visit }, text }: { readonly view: VisitView; readonly text: string }) {
  const isNoted = lookOf(visit) === text;
  return (
    <button type="button" class="quiet wide" disabled={isNoted} onClick={() => noteLook(visit, text)}>
      {isNoted ? 'Noted in the visit' : 'Note it in the visit'}
    </button>
  );
}

function Suspicion({ hint, at }: { readonly hint: ToldHint; readonly at: At }) {
  const reason = reasonOf(hint);
  return (
    <Card tone="caution" title={nameOf(hint)}>
      {reason && <div class="bench-drawing">{reason}</div>}
      <p>{words.hint(hint, at.units)}</p>
    </Card>
  );
}

function reasonOf(hint: ToldHint) {
  switch (hint.kind) {
    case 'places-first':
      return undefined;
    case 'setback':
      return <WheelMovedBack />;
    case 'moved-back':
      return <WheelMovedBack where={isAxle(hint.where) ? undefined : hint.where} />;
    case 'turns':
      return <Turns />;
    case 'camber':
      return <Leaning angles={leaningOf(hint)} />;
    case 'askew':
    case 'rear-toe':
      return <RearToe angles={pointingOf(hint)} />;
    case 'included':
      return <BentDrawing look="knuckle-or-spindle" />;
    case 'shifted':
      return <BentDrawing look={hint.look} />;
    default:
      return <BentDrawing camber={hint.camber} sai={hint.sai} look={hint.look} />;
  }
}
