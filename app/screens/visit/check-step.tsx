/** First load. The pre-checks as one folded step on top of the strip. */
import { useState } from 'preact/hooks';
import { PunchedStep } from '../../parts/punched-step.tsx';
import type { VisitView } from '../../state/visits.ts';
import { CHECKS, ChecksBody, checksDone } from './checks.tsx';

export function CheckStep({ view: { visit } }: { readonly view: VisitView }) {
  const [open, setOpen] = useState(false);
  const count = checksDone(visit);
  return (
    <PunchedStep
      state={count > 0 ? 'done' : 'later'}
      title="Before you measure"
      note={`${count} of ${CHECKS.length}`}
      time={open ? 'close' : 'open'}
      onPick={() => setOpen(!open)}
    >
      {open && <ChecksBody visit={visit} />}
    </PunchedStep>
  );
}
