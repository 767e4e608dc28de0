/** The pre-checks as one folded step on top of the strip. */
import { PunchedStep } from '../../parts/punched-step.tsx';
import { isWide } from '../../shell/is-wide.ts';
import { Lazy } from '../../shell/lazy.tsx';
import { lookOf } from '../../state/visit-notes.ts';
import type { VisitView } from '../../state/visits.ts';
import { CHECKS, checksDone } from './check-list.ts';
import { openStep, turnStep } from './open-step.ts';

const loadBody = async () => (await import('./checks.tsx')).ChecksBody;

export function CheckStep({ view: { visit, rounds } }: { readonly view: VisitView }) {
  const id = `checks:${visit.id}`;
  const isHeldOpen = rounds.length === 0 && isWide();
  const open = isHeldOpen || openStep.value === id;
  const count = checksDone(visit);
  return (
    <PunchedStep
      state={count > 0 ? 'done' : 'later'}
      title="Before you measure"
      note={`${count} of ${CHECKS.length}`}
      time={open ? 'close' : 'open'}
      onPick={() => isHeldOpen || turnStep(id)}
    >
      {lookOf(visit) && (
        <p class="caution-line">
          {open ? `From the bench, where to look: ${lookOf(visit)}` : 'Where to look for a bent part is noted here.'}
        </p>
      )}
      {open && <Lazy load={loadBody} props={{ visit }} quiet />}
    </PunchedStep>
  );
}
