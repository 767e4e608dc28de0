/** What was learned of a car: adjuster by adjuster what a step does on it, against what its layout or its chart said. */
import './learned.css';
import { useState } from 'preact/hooks';
import type { Corner } from '../../../core/contract.ts';
import { CORNERS } from '../../../core/contract.ts';
import type { ToldTaught } from '../../../core/index.ts';
import type { CarRecord } from '../../../core/records/stored.ts';
import { Card } from '../../parts/card.tsx';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { LearnedLegend, LearnedRuler } from '../../parts/learned-ruler.tsx';
import { units } from '../../state/preferences.ts';
import { useTaught } from '../../state/taught.ts';
import { angleText } from '../../state/units.ts';
import { why } from '../../state/why.ts';
import { words } from '../../state/words.ts';

export function LearnedCard({ record }: { readonly record: CarRecord }) {
  const { value, error, busy } = useTaught(record);
  const [all, setAll] = useState(false);
  const starts = (['front', 'rear'] as const).flatMap((axle) => record.car[axle].start?.of ?? []);
  if (!busy && !value && !error && starts.length === 0) return null;
  const steps = value?.steps ?? [];
  const corners = CORNERS.filter((corner) => steps.some((one) => one.corner === corner));
  return (
    <Card title="What was learned" aside={value && value.readings > 0 ? `${value.readings} readings` : undefined}>
      {[...new Set(starts)].map((of) => (
        <p key={of} class="soft">
          It began with what was learned on {of}.
        </p>
      ))}
      {busy && !value && (
        <p role="status" class="soft">
          Working it out…
        </p>
      )}
      {error && <p role="alert">{why(error, record)}</p>}
      {value && steps.length === 0 && (
        <p>Nothing yet that the layout did not say: the next move that is measured tells more.</p>
      )}
      {(all ? corners : corners.slice(0, 1)).map((corner) => (
        <OfCorner key={corner} corner={corner} steps={steps.filter((one) => one.corner === corner)} />
      ))}
      {corners.length > 1 && !all && (
        <button type="button" class="quiet wide" onClick={() => setAll(true)}>
          {corners.slice(1).join(', ')} too
        </button>
      )}
      {steps.length > 0 && (
        <div class="learned-legend">
          <LearnedLegend />
        </div>
      )}
      {value && value.leftOut > 0 && (
        <p class="soft">
          {value.leftOut === 1 ? 'One reading of a wheel was' : `${value.leftOut} readings of a wheel were`} left out:
          no such car could have given {value.leftOut === 1 ? 'it' : 'them'}.
        </p>
      )}
    </Card>
  );
}

function OfCorner({ corner, steps }: { readonly corner: Corner; readonly steps: readonly ToldTaught[] }) {
  return (
    <section class="learned">
      <h3>
        <CornerMark corner={corner} />
      </h3>
      {steps.map((one) => (
        <OfStep key={one.adjuster.adjuster} one={one} />
      ))}
    </section>
  );
}

function OfStep({ one: { adjuster, said, angles } }: { readonly one: ToldTaught }) {
  const [main] = angles;
  return (
    <div class="learned-step">
      <p>
        <strong>{adjuster.name}</strong> <span class="soft">{words.step(said, units.value)}</span>
        {main && <span class="learned-said">{saidOf(main)}</span>}
      </p>
      {angles.map(({ angle, entered, learned }) => (
        <div key={angle} class="learned-angle">
          <p class="learned-line">
            <span>{angle}</span>
            <span>
              <strong>{signed(learned.by)}</strong> <span class="soft">± {angleText(2 * learned.deviation)}</span>
              <span class="soft learned-was">
                {' '}
                layout {signed(entered.by)} ± {angleText(2 * entered.deviation)}
              </span>
            </span>
          </p>
          <LearnedRuler entered={entered} learned={learned} format={signed} />
        </div>
      ))}
    </div>
  );
}

/** What it does mostly against what the layout said, and how much better that is known, in plain words. */
function saidOf({ angle, entered, learned }: ToldTaught['angles'][number]): string {
  const share = Math.abs(entered.by) > 0 ? learned.by / entered.by - 1 : 0;
  const percent = Math.round(Math.abs(share) * 100);
  const isWithin = Math.abs(learned.by - entered.by) < learned.deviation || percent < 3;
  const does = isWithin
    ? `Does to ${angle} what the layout says`
    : `Does ${percent} % ${share > 0 ? 'more' : 'less'} to ${angle} than the layout says`;
  const times = Math.round(entered.deviation / learned.deviation);
  return times >= 2 ? `${does}, known ${times} times as well.` : `${does}.`;
}

const signed = (degrees: number): string => angleText(degrees, true);
