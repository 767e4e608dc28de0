/** Re-measured: predicted against measured on one ruler an angle, and why where the two part. */
import type { AxleName, Corner, Explanation, Plan, Reading } from '../../../core/contract.ts';
import { levelled } from '../../../core/reading/steering-wheel.ts';
import { useAfterPaint } from '../../parts/after-paint.tsx';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { Ruler, RulerLegend } from '../../parts/ruler.tsx';
import { Verdict } from '../../parts/verdict.tsx';
import { againstText } from '../../state/against.ts';
import { type Compared, compare } from '../../state/comparing.ts';
import { angleWord, fieldsOf } from '../../state/fields.ts';
import { formOfRecord } from '../../state/form.ts';
import { units } from '../../state/preferences.ts';
import { valueText } from '../../state/units.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { words } from '../../state/words.ts';
import { AxleGone } from './axle-gone.tsx';
import { CauseCard, isToldOf } from './cause.tsx';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly before: RoundView | undefined;
  readonly expected: Reading | undefined;
  readonly plan: Plan | undefined;
  readonly causes: readonly Explanation[];
}

export function CompareBody({ view, round, before, expected, plan, causes }: Props) {
  const painted = useAfterPaint();
  const { car, spec } = view.car;
  const rim = car.wheel.rimDiameter;
  // A plan's figures are with the steering wheel level.
  const seen = (reading: Reading): Reading => {
    const { steeringWheel } = reading;
    return { ...levelled(reading, car), ...(steeringWheel !== undefined && { steeringWheel }) };
  };
  const { reading } = round.record;
  const rows = compare(
    fieldsOf(car, formOfRecord(round.record)),
    spec,
    seen(reading),
    before && seen(before.record.reading),
    expected,
    plan?.deviation,
  );
  const told = isToldOf(view, round, causes) ? (plan?.noted ?? []) : [];
  return (
    <>
      <CauseCard view={view} round={round} before={before} rows={rows} causes={causes} />
      {told.map((one) => (
        <p key={JSON.stringify(one)} class="plan-note">
          {words.note(one, units.value)}
        </p>
      ))}
      {PLACES.slice(0, painted ? undefined : FIRST).map((place) => (
        <PlaceRulers key={place} place={place} rows={rows.filter(({ where }) => where === place)} rim={rim} />
      ))}
      <p class="soft">{againstText(round.record)}</p>
      <AxleGone reading={expected} axle="front" />
      <AxleGone reading={expected} axle="rear" />
      <RulerLegend />
    </>
  );
}

/** Places on a phone's glass at once. */
const FIRST = 2;
const PLACES = ['LF', 'RF', 'front', 'LR', 'RR', 'rear'] as const satisfies readonly (Corner | AxleName)[];

function PlaceRulers({
  place,
  rows,
  rim,
}: {
  readonly place: Corner | AxleName;
  readonly rows: readonly Compared[];
  readonly rim: number | undefined;
}) {
  if (rows.length === 0) return null;
  return (
    <section class="compare">
      <h3>
        <CornerMark corner={place} />
      </h3>
      {rows.map((row) => (
        <AngleRuler key={row.angle} row={row} rim={rim} />
      ))}
    </section>
  );
}

function AngleRuler({ row, rim }: { readonly row: Compared; readonly rim: number | undefined }) {
  const { angle, measured, predicted, found, deviation, window, verdict } = row;
  const show = (value: number) => valueText(angle, value, rim);
  return (
    <div class="compare-angle">
      <p class="compare-line">
        <Verdict state={verdict} label={`${angleWord(angle)}${off(row, show)}`} />
        <span class="compare-figures">
          {predicted !== undefined && <span class="soft">predicted {show(predicted)}</span>}
          <strong>{show(measured)}</strong>
        </span>
      </p>
      <Ruler
        measured={measured}
        format={show}
        {...(window ? { window } : {})}
        {...(found === undefined ? {} : { found })}
        {...(predicted === undefined ? {} : { predicted })}
        {...(deviation === undefined ? {} : { deviation })}
      />
    </div>
  );
}

function off({ measured, window }: Compared, show: (value: number) => string): string {
  if (window && measured > window.high) return `, high by ${show(measured - window.high)}`;
  if (window && measured < window.low) return `, low by ${show(window.low - measured)}`;
  return '';
}
