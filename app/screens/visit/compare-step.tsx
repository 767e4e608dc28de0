/** The live step after a re-measure: compared with the prediction, then another round or as left. */
import type { ComponentChildren } from 'preact';
import { HARDLY_SEEN, levelled } from '../../../core/reading/steering-wheel.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { correctReading } from '../../state/correct-reading.ts';
import { jobsLeft } from '../../state/jobs.ts';
import { judged } from '../../state/judge.ts';
import { measureNow } from '../../state/measure-now.ts';
import { useExpected, useExplanation, usePlan } from '../../state/planning.ts';
import { choose } from '../../state/stage.ts';
import type { VisitView } from '../../state/visits.ts';
import { isToldOf } from './cause.tsx';
import { CompareBody } from './compare.tsx';
import { PointsTo } from './points-to.tsx';

export function CompareStep({ view, past }: { readonly view: VisitView; readonly past: ComponentChildren }) {
  const round = view.rounds.at(-1);
  const before = view.rounds.at(-2);
  const expected = useExpected(view, before);
  const { value: causes = [] } = useExplanation(view, before && round);
  const whole = usePlan(view, before);
  // Measured before all was made: what was not made makes the reading no less sure.
  const undone = whole.value && before ? jobsLeft(whole.value, before).flat() : [];
  const plan = usePlan(view, before, undone);
  if (!round) return null;
  const { reading } = round.record;
  const { verdict } = judged(levelled(reading, view.car.car), view.car.spec);
  const isLevel = Math.abs(reading.steeringWheel ?? 0) <= HARDLY_SEEN;
  const another = {
    label: 'Plan the next moves',
    onPress: () => choose(view.visit.id, { goOn: round.record.id }),
  };
  const left = { label: 'As left', onPress: () => choose(view.visit.id, { signOff: round.record.id }) };
  const change = { label: 'Change a reading', onPress: () => correctReading(view, round) };
  const again = { label: 'Measure again', onPress: () => measureNow(view) };
  const good = isLevel && (verdict === 'in' || verdict === 'edge');
  return (
    <>
      <Sheet>
        {past}
        <PunchedStep
          state="live"
          title={good ? 'All in the window' : 'Predicted against measured'}
          time={`round ${view.rounds.length - 1}`}
        >
          <CompareBody
            view={view}
            round={round}
            before={before}
            expected={expected.value}
            plan={plan.value}
            causes={causes}
          />
          {/* One voice: what this reading tells comes before what the first one did. */}
          {view.rounds[0] && !isToldOf(view, round, causes) && <PointsTo view={view} round={view.rounds[0]} />}
        </PunchedStep>
      </Sheet>
      <ActionBar primary={good ? left : another} secondary={[good ? another : left, again, change]} />
    </>
  );
}
