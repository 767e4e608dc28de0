/** What the adjusters of a corner can reach, folded away; worked out when it is opened. */
import { useState } from 'preact/hooks';
import type { Corner, Plan } from '../../../core/contract.ts';
import { formatAngle } from '../../../core/units/format.ts';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { ReachPicture } from '../../parts/reach-picture.tsx';
import { useReach } from '../../state/planning.ts';
import { units } from '../../state/preferences.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { why } from '../../state/why.ts';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly plan: Plan;
}

/** One for each corner that has moves. */
export function ReachCards({ plan, ...rest }: Props) {
  const corners = [...new Set(plan.moves.map(({ corner }) => corner))];
  return (
    <>
      {corners.map((corner) => (
        <ReachCard key={corner} corner={corner} plan={plan} {...rest} />
      ))}
    </>
  );
}

function ReachCard({ view, round, plan, corner }: Props & { readonly corner: Corner }) {
  const [open, setOpen] = useState(false);
  const { value, error } = useReach(view, round, plan, open ? corner : undefined);
  const { angle: mode, decimal } = units.value;
  return (
    <details class="reach-card" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <CornerMark corner={corner} /> Reach of the adjusters
      </summary>
      {value && (
        <ReachPicture
          reach={value}
          format={(degrees, digits) =>
            formatAngle(degrees, { mode, decimal, mark: true, ...(digits === undefined ? {} : { digits }) })
          }
        />
      )}
      {error && <p role="alert">{why(error, view.car)}</p>}
      {open && !value && !error && (
        <p role="status" class="soft">
          Working it out…
        </p>
      )}
    </details>
  );
}
