/** Other plans than the one shown, folded away: how much work each takes, how near the aim, how sure. */
import { useState } from 'preact/hooks';
import type { PlanStyle } from '../../../core/contract.ts';
import type { PlanChoice } from '../../../core/plan/choices.ts';
import { chanceText } from '../../state/move-words.ts';
import { choosePlan, chosenPlan, usePlanChoices } from '../../state/planning.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { why } from '../../state/why.ts';

const NAMES: Readonly<Record<PlanStyle, string>> = {
  practical: 'practical',
  surest: 'surest',
  closest: 'closest to the aim',
  'least-work': 'least work',
};

/** "Surest, least work" */
function nameOf({ styles }: PlanChoice): string {
  const name = styles.map((style) => NAMES[style]).join(', ') || 'in between';
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** "6 moves, 56 min" */
const movesText = ({ jobs, effort }: PlanChoice): string =>
  `${jobs} ${jobs === 1 ? 'move' : 'moves'}, ${Math.round(effort)} min`;

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
}

/** Chance that less work may cost and still be worth a hint. */
const NEARLY = 0.02;

/** The plan with the least work of those that are nearly as sure; none where the chosen one is that, as the practical is. */
function lighterThan(chosen: PlanChoice | undefined, all: readonly PlanChoice[]): PlanChoice | undefined {
  if (!chosen?.inWindow || chosen.styles.includes('practical')) return undefined;
  return all
    .filter((one) => one.inWindow && one.effort < chosen.effort && one.chance > chosen.chance - NEARLY)
    .sort((a, b) => a.effort - b.effort)[0];
}

/** Only until a move is made; what was begun is kept to. */
export function PlanChoiceCard({ view, round }: Props) {
  const [open, setOpen] = useState(false);
  const { value, error } = usePlanChoices(view, round);
  const chosen = chosenPlan(view.visit.id);
  const isChosen = ({ ask, styles }: PlanChoice): boolean =>
    chosen.maxEffort === undefined
      ? styles.includes(chosen.style ?? 'practical')
      : ask.maxEffort !== undefined && Math.abs(ask.maxEffort - chosen.maxEffort) < 1e-6;
  const lighter = lighterThan(value?.find(isChosen), value ?? []);
  return (
    <details class="plan-choices" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Other plans
        {lighter && <span class="plan-lighter">Nearly as sure: {movesText(lighter)}</span>}
      </summary>
      {value?.map((one) => (
        <button
          key={JSON.stringify(one.ask)}
          type="button"
          class="plan-choice"
          aria-pressed={isChosen(one)}
          onClick={() => choosePlan(view.visit.id, one.ask)}
        >
          <span>{nameOf(one)}</span>
          <strong>{one.inWindow ? chanceText(one.chance) : '–'}</strong>
          <span class="soft">{movesText(one)}</span>
          <span class="soft">{Math.round(one.offAim * 100)} % off aim</span>
        </button>
      ))}
      {value?.length === 1 && <p>No other is worth a choice: this one is best in every respect.</p>}
      {value && value.length > 1 && (
        <p class="soft">
          0&nbsp;% off aim: every angle on its aim; 100&nbsp;%: at the edge of its window. Every position of every
          adjuster was weighed: none does it with less work, none comes closer.
        </p>
      )}
      {error && <p role="alert">{why(error, view.car)}</p>}
      {open && !value && !error && (
        <p role="status" class="soft">
          Working them out…
        </p>
      )}
    </details>
  );
}
