/** What a plan leaves out of its window: by how much, what is at its stop, whether a part is bent, what would free it. */
import type { Plan, Shortfall } from '../../../core/contract.ts';
import { AXLES, axleOf, cornersOf, isAxle } from '../../../core/corners.ts';
import type { FreeChange, Stuck } from '../../../core/index.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { figure, lengthText, partAngle } from '../../../core/units/shop.ts';
import { Card } from '../../parts/card.tsx';
import { leftIn } from '../../state/leave.ts';
import { chanceText, nameIn, offText } from '../../state/move-words.ts';
import { useHints, useWhatWouldFree } from '../../state/planning.ts';
import { units } from '../../state/preferences.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { why } from '../../state/why.ts';
import { words } from '../../state/words.ts';

/** A reading just outside may come out just inside. */
const WORTH_TELLING = 0.01;

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly plan: Plan;
}

export function ShortfallCard({ view, round, plan }: Props) {
  // What is out by less than the figures show is not worth a word beside what is.
  const seen = plan.shortfall.filter(({ by }) => Math.abs(by) >= 0.005);
  const short = seen.length > 0 ? seen : plan.shortfall;
  const places = [...new Set(short.map(({ where }) => where))];
  const left = leftIn(view, round).now.length > 0;
  const worth = plan.chance >= WORTH_TELLING;
  // A search that was cut does not tell what cannot be.
  const isCut = plan.noted.some(({ note }) => note === 'not-proven');
  const title = isCut ? 'No setting in all windows was found' : 'The windows cannot all be reached';
  return (
    <Card tone="caution" title={left ? 'Without what is left, not all comes in' : title}>
      <p class="soft">
        {left
          ? `Chance that the re-measure is in the window without it: ${worth ? chanceText(plan.chance) : 'under 1 %'}.`
          : isCut
            ? 'This is as near as the search came.'
            : 'This is as near as they come.'}
        {!left && worth && ` Chance that the re-measure is in the window even so: ${chanceText(plan.chance)}.`}
      </p>
      {places.map((where) => (
        <Place key={where} view={view} short={short.filter((one) => one.where === where)} />
      ))}
      {!left && <Bent view={view} round={round} plan={plan} />}
      {!left && !isCut && <Freeing view={view} round={round} />}
    </Card>
  );
}

/** All of one wheel or axle, and what is at its stop there, once. */
function Place({ view, short }: { readonly view: VisitView; readonly short: readonly Shortfall[] }) {
  const { car } = view.car;
  const stops = new Set(
    short.flatMap(({ where, atStop }) =>
      atStop.map((ref) => `${isAxle(where) ? `${ref.corner} ` : ''}${nameIn(car, ref)}`),
    ),
  );
  return (
    <p>
      {short.map((one) => offText(car, one)).join(', ')}.
      {stops.size > 0 && <span class="soft move-way">At the end of travel: {[...stops].join(', ')}.</span>}
    </p>
  );
}

/** What cannot be brought in may not be a matter of adjustment. */
function Bent({ view, round, plan }: Props) {
  const { car } = view.car;
  const { reading } = round.record;
  const kinds = { front: car.front.suspension.kind, rear: car.rear.suspension.kind };
  const leaning = plan.shortfall.filter(({ angle }) => /camber|caster/i.test(angle));
  const corners = new Set(leaning.flatMap(({ where }) => cornersOf(where)));
  const axles = (['front', 'rear'] as const).filter((axle) => AXLES[axle].some((corner) => corners.has(corner)));
  const { value: all } = useHints(view, round);
  const hints = all?.filter(({ where }) => axles.includes(isAxle(where) ? where : axleOf(where))) ?? [];
  const unread = axles.filter(
    (axle) =>
      car[axle].steered &&
      suspensionKinds[kinds[axle]]?.steeringAxis &&
      AXLES[axle].some((corner) => reading[corner]?.sai === undefined),
  );
  return (
    <>
      {hints.map((hint) => (
        <p key={JSON.stringify(hint)}>
          {hint.kind !== 'places-first' && <strong>Look for a bent part before parts are bought. </strong>}
          {isAxle(hint.where) ? '' : `${hint.where}: `}
          {words.hint(hint, units.value)}
        </p>
      ))}
      {all && hints.length === 0 && unread.length > 0 && (
        <p>SAI was not measured: it tells a bent part from a lack of adjustment. Measure it before parts are bought.</p>
      )}
    </>
  );
}

/** How many ways are worth reading. */
const FEW = 3;

function Freeing({ view, round }: Omit<Props, 'plan'>) {
  const { value, error } = useWhatWouldFree(view, round);
  if (error) return <p role="alert">{why(error, view.car)}</p>;
  // Where shims alone are lacking the plan's notes name them.
  if (value?.length === 0) return null;
  return (
    <section class="freeing">
      <h3>What would free it</h3>
      {value ? (
        value.map((stuck) => <Ways key={stuck.corners.join()} view={view} stuck={stuck} />)
      ) : (
        <p role="status" class="soft">
          Working it out…
        </p>
      )}
      {value && <p class="soft">Only with parts that the maker of the car or of the kit allows.</p>}
    </section>
  );
}

function Ways({ view, stuck: { corners, ways } }: { readonly view: VisitView; readonly stuck: Stuck }) {
  if (ways.length === 0) {
    return (
      <p>
        {corners.join(', ')}: no adjuster alone and no pair that was tried would do by going further. Check for a bent
        or worn part, and that the build on file is right.
      </p>
    );
  }
  return (
    <ul>
      {ways.slice(0, FEW).map((way) => (
        <li key={JSON.stringify(way)}>{way.map((one) => changeText(view, one)).join(' and ')}.</li>
      ))}
    </ul>
  );
}

const amount = (by: number, unit: 'mm' | 'turns' | 'degrees'): string => {
  if (unit === 'mm') return lengthText(Number(by.toFixed(2)), units.value);
  return unit === 'degrees'
    ? partAngle(Number(by.toFixed(2)), units.value)
    : `${figure(Number(by.toFixed(2)), units.value)} ${unit}`;
};

/** `LF Upper arm, front shims: 2.5 mm further outboard (more shims, longer studs)` */
function changeText({ car: { car } }: VisitView, { further, ...ref }: FreeChange): string {
  const name = `${ref.corner} ${nameIn(car, ref)}`;
  if (!further) return `${name}, if it could be moved`;
  const { by, unit, way, takes } = further;
  return `${name}: ${amount(by, unit)} further${way ? ` ${way}` : ''} than it goes (${takes})`;
}
