/** The card of a move that goes by the rack: the figure that it is turned to, about where that is, what else the rack then shows. */
import './by-rack.css';
import type { LiveAngle } from '../../../core/contract.ts';
import { isAxle } from '../../../core/corners.ts';
import { AdjusterDrawing } from '../../parts/adjuster-drawing.tsx';
import { Card } from '../../parts/card.tsx';
import { Needle } from '../../parts/needle.tsx';
import {
  adjusterIn,
  guessOf,
  type Of,
  othersOf,
  placesNear,
  placeWord,
  setStand,
  standOf,
  withinText,
} from '../../state/by-rack.ts';
import { headingOf } from '../../state/jobs.ts';
import { units } from '../../state/preferences.ts';
import { toeUnitWord, unitsFor, valueText } from '../../state/units.ts';
import { words } from '../../state/words.ts';
import { PracticeTurn } from './practice-button.tsx';

/** Degrees that a rack shows. */
const SHOWN = 0.01;

interface Asks {
  /** A figure of another angle is to be typed. */
  readonly onType: (angle: LiveAngle) => void;
  /** The rest is to be planned from what the rack shows; absent while it is typed. */
  readonly onPlan?: () => void;
}

export function ByRack({ onType, onPlan, ...of }: Of & Asks) {
  const { view, move } = of;
  const { setBy, watched, act } = move;
  const adjuster = adjusterIn(of);
  if (!setBy || !watched || !adjuster) return null;
  const { car } = view.car;
  const show = (value: number): string => valueText(setBy.angle, value, car.wheel.rimDiameter);
  const about = placeWord(adjuster, move, guessOf(adjuster, move));
  return (
    <div class="by-rack">
      <p class="by-rack-until">{words.live({ live: 'until', act })}</p>
      <p class="by-rack-target">
        <strong>{show(setBy.value)}</strong>
        <span>
          {isAxle(headingOf(car, [move]).where) && `${move.corner} `}
          {setBy.angle}
          {setBy.angle === 'toe' && unitsFor(car).toe !== 'angle' && <small>{toeUnitWord()}</small>}
        </span>
      </p>
      <Needle from={watched.from} value={setBy.value} format={show} />
      <p class="by-rack-about">
        about <strong>{about.text}</strong> {about.unit}
        {about.way && <small>{about.way}</small>}
      </p>
      <Then of={of} onType={onType} />
      {onPlan && <Apart {...of} onPlan={onPlan} />}
      <PracticeTurn {...of} />
    </div>
  );
}

/** What the rack should read beside it: what it shows at once may be typed, caster may want a new sweep. */
function Then({ of, onType }: { readonly of: Of } & Pick<Asks, 'onType'>) {
  const { view, move, round } = of;
  const { car } = view.car;
  const rim = car.wheel.rimDiameter;
  const before = round.record.reading[move.corner]?.caster;
  const caster = move.expectAfter[move.corner]?.caster;
  const others = othersOf(of);
  const hidden =
    caster !== undefined && move.setBy?.angle !== 'caster' && !others.some(({ angle }) => angle === 'caster');
  return (
    <>
      {others.map((one) => (
        <button key={one.angle} type="button" class="by-rack-then" onClick={() => onType(one.angle)}>
          <span>
            {words.live({ live: 'then', angle: one.angle })}
            <span class="by-rack-expected">
              <strong>{valueText(one.angle, one.expected, rim)}</strong> ± {withinText(car, one.angle, one.within)}
            </span>
          </span>
          {one.text ? (
            <strong class={one.error ? 'wrong' : ''}>
              <small>it reads</small> {one.text}
            </strong>
          ) : (
            <span class="by-rack-type">It reads…</span>
          )}
        </button>
      ))}
      {hidden && before !== undefined && Math.abs(caster - before) >= SHOWN && (
        <p class="soft">{words.live({ live: 'sweep', figure: valueText('caster', caster, rim) })}</p>
      )}
    </>
  );
}

/** About where that is, drawn as for a move by its mark. */
export function Drawn(of: Of) {
  const adjuster = adjusterIn(of);
  if (!adjuster) return null;
  const { corner, from } = of.move;
  const to = guessOf(adjuster, of.move);
  return (
    <div class="by-rack-drawn">
      <AdjusterDrawing adjuster={adjuster} corner={corner} from={from} to={to} units={units.value} />
    </div>
  );
}

/** Where it ended, for who looks: one touch, and a second one leaves it at the guess again. */
export function Stand(of: Of) {
  const adjuster = adjusterIn(of);
  if (!adjuster || !of.move.setBy) return null;
  const stands = standOf(of);
  const near = placesNear(adjuster, of.move);
  const all = stands === undefined || near.includes(stands) ? near : [...near, stands].sort((a, b) => a - b);
  const places = all.map((at) => ({ at, ...placeWord(adjuster, of.move, at) }));
  const [unit = ''] = places.map((one) => one.unit).filter(Boolean);
  return (
    <fieldset class="choice by-rack-stand">
      <legend>It ended at{unit && ` (${unit})`}, if you read it off</legend>
      {places.map(({ at, text }) => (
        <button
          key={at}
          type="button"
          aria-pressed={stands === at}
          onClick={() => setStand(of, stands === at ? undefined : at)}
        >
          {text}
        </button>
      ))}
    </fieldset>
  );
}

/** Another angle reads as nobody would expect: what to look at, and the way on from what is read. */
function Apart({ onPlan, ...of }: Of & Required<Pick<Asks, 'onPlan'>>) {
  const apart = othersOf(of).filter(({ isApart }) => isApart);
  if (apart.length === 0) return null;
  const { car } = of.view.car;
  const rim = car.wheel.rimDiameter;
  return (
    <Card tone="caution" title="Not as it should be">
      {apart.map((one) => (
        <p key={one.angle} role="alert">
          {words.live({
            live: 'apart',
            angle: one.angle,
            read: valueText(one.angle, one.value!, rim),
            figure: valueText(one.angle, one.expected, rim),
            within: withinText(car, one.angle, one.within),
          })}
        </p>
      ))}
      <button type="button" class="quiet wide" onClick={onPlan}>
        Plan the rest from here
      </button>
    </Card>
  );
}
