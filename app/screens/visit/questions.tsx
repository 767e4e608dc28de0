/** Asked once all is typed, before anything is planned from it: what is unlikely. All of it is taken as it is. */
import type { Reading } from '../../../core/contract.ts';
import { isCopy, leaningAxles, swappedAxles, unusualDiameter } from '../../../core/reading/doubtful.ts';
import { crossHeight } from '../../../core/reading/ride-heights.ts';
import { lengthText } from '../../../core/units/shop.ts';
import { Card } from '../../parts/card.tsx';
import { entryOf, questionOf } from '../../state/entry.ts';
import { fieldWord, isToe } from '../../state/fields.ts';
import { useExpected } from '../../state/planning.ts';
import { units } from '../../state/preferences.ts';
import { records } from '../../state/records.ts';
import { skipKey } from '../../state/typing.ts';
import { correcting, entryForm, typedRecord } from '../../state/visit-actions.ts';
import { leftReading, type VisitView, visitsOf, visitView } from '../../state/visits.ts';
import './visit.css';
import { VerdictList } from './verdict-list.tsx';

export function Questions({ view }: { readonly view: VisitView }) {
  const { fields, texts, own } = entryOf(view);
  const { rimDiameter } = view.car.car.wheel;
  const asked = fields.flatMap((field) => {
    const question = questionOf(view, field);
    return question ? [`${field.where}: ${question}`] : [];
  });
  const inLengths = own.toe !== 'angle' && fields.some(({ id, angle }) => isToe(angle) && texts[id]);
  if (inLengths && rimDiameter !== undefined && unusualDiameter(rimDiameter)) {
    asked.push(
      `Toe is typed as a length at a diameter of ${lengthText(rimDiameter, units.value)}, as the car’s card says. Is that right?`,
    );
  }
  asked.push(...useWhole(view), ...leaning(view));
  const empty = fields.filter(({ id }) => !texts[id] && !texts[skipKey(id)]);
  if (empty.length > 0 && empty.length < fields.length && !correcting(view)) {
    asked.push(`Left empty: ${empty.map(fieldWord).join(', ')}.`);
  }
  if (asked.length === 0) return null;
  return (
    <Card tone="caution" title="Worth a second look">
      <ul role="status">
        {asked.map((question) => (
          <li key={question}>{question}</li>
        ))}
      </ul>
    </Card>
  );
}

/** How the reading stands, once all of it is typed and before any plan. */
export function TypedVerdict({ view }: { readonly view: VisitView }) {
  return <VerdictList car={view.car} reading={typedRecord(view, {}).reading} form={entryForm(view)} />;
}

/** A body that stands so far apart left and right is a slip of the hand, or a spring to look at before any angle. */
function leaning(view: VisitView): string[] {
  const { reading } = typedRecord(view, {});
  return leaningAxles(reading).map(
    (axle) =>
      `Ride height at the ${axle} differs by ${lengthText(Math.abs(crossHeight(reading, axle) ?? 0), units.value)}, left to right. Is it right? Angles are set at the maker’s height.`,
  );
}

/** What the reading as a whole looks like beside the one before it and beside what should have come. */
function useWhole(view: VisitView): string[] {
  const before = correcting(view) ? undefined : view.rounds.at(-1);
  const { value: expected } = useExpected(view, before);
  if (correcting(view)) return [];
  const { reading } = typedRecord(view, {});
  const last = before?.record.reading ?? lastVisit(view);
  const copy = last && isCopy(reading, last) ? [copyText(before !== undefined)] : [];
  const swapped = swappedAxles(reading, (before ? expected : last) ?? {});
  return [
    ...copy,
    ...swapped.map(
      (axle) => `The ${axle} wheels look as if left and right were taken one for the other. Are they right?`,
    ),
  ];
}

const copyText = (thisVisit: boolean): string =>
  thisVisit
    ? 'Every figure is as it was before the moves. Was it measured again?'
    : 'Every figure is as the last visit left it. Was it measured today?';

/** What the car was left with by its visit before this one. */
function lastVisit(view: VisitView): Reading | undefined {
  const [before] = visitsOf(records.value, view.car.id).filter(({ id }) => id !== view.visit.id);
  const seen = before && visitView(records.value, before.id);
  return seen && leftReading(seen);
}
