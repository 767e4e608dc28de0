/** Re-measured: predicted against measured on one ruler an angle, and in words where the two part. */
import type { AxleName, Corner, Plan, Reading } from '../../../core/contract.ts';
import { levelled } from '../../../core/reading/steering-wheel.ts';
import { Card } from '../../parts/card.tsx';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { Ruler, RulerLegend } from '../../parts/ruler.tsx';
import { Verdict } from '../../parts/verdict.tsx';
import { againstText } from '../../state/against.ts';
import { type Compared, compare } from '../../state/comparing.ts';
import { angleWord, fieldsOf, fieldWord } from '../../state/fields.ts';
import { formOfRecord } from '../../state/form.ts';
import { valueText } from '../../state/units.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { AxleGone } from './axle-gone.tsx';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly before: RoundView | undefined;
  readonly expected: Reading | undefined;
  readonly plan: Plan | undefined;
}

export function CompareBody({ view, round, before, expected, plan }: Props) {
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
  const parted = rows.filter((row) => row.parted !== undefined);
  return (
    <>
      {parted.length > 0 && <Parted rows={parted} rim={rim} notes={plan?.notes ?? []} />}
      {PLACES.map((place) => (
        <PlaceRulers key={place} place={place} rows={rows.filter(({ where }) => where === place)} rim={rim} />
      ))}
      <p class="soft">{againstText(round.record)}</p>
      <AxleGone reading={expected} axle="front" />
      <AxleGone reading={expected} axle="rear" />
      <RulerLegend />
    </>
  );
}

const PLACES = ['LF', 'RF', 'front', 'LR', 'RR', 'rear'] as const satisfies readonly (Corner | AxleName)[];

function PlaceRulers({
  place,
  rows,
  rim,
}: {
  readonly place: Corner | AxleName;
  readonly rows: readonly Compared[];
  readonly rim: number;
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

function AngleRuler({ row, rim }: { readonly row: Compared; readonly rim: number }) {
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

interface PartedProps {
  readonly rows: readonly Compared[];
  readonly rim: number;
  readonly notes: readonly string[];
}

/** Says plainly what did not come as predicted and what would explain that much. */
function Parted({ rows, rim, notes }: PartedProps) {
  return (
    <Card tone="caution" title="Not all came as predicted">
      <ul>
        {rows.map((row) => (
          <li key={row.id}>
            {fieldWord(row)} is {valueText(row.angle, Math.abs(row.parted ?? 0), rim)}{' '}
            {(row.parted ?? 0) > 0 ? 'above' : 'below'}; gauge and tape explain ±
            {valueText(row.angle, 2 * (row.deviation ?? 0), rim)}.
          </li>
        ))}
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
      <p>Check that the move was made, the right way and on this wheel, and that the figure was read right.</p>
    </Card>
  );
}
