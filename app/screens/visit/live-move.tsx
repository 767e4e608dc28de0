/** The card of the move that is next: its picture, what the rack then shows, what to do, the torque. */
import type { Corner, Move, Reading } from '../../../core/contract.ts';
import { axleOf } from '../../../core/corners.ts';
import { angleOf } from '../../../core/reading/axle-angles.ts';
import { AdjusterDrawing } from '../../parts/adjuster-drawing.tsx';
import { Card } from '../../parts/card.tsx';
import { angleWord, fieldsOf } from '../../state/fields.ts';
import { formOfRecord } from '../../state/form.ts';
import { adjusterOf, stacks } from '../../state/move-words.ts';
import { units } from '../../state/preferences.ts';
import { choice, choose, torqueKey } from '../../state/stage.ts';
import { standingKey, UNKNOWN } from '../../state/standing.ts';
import { valueText } from '../../state/units.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { words } from '../../state/words.ts';
import { AxleGone } from './axle-gone.tsx';
import { SweepNote } from './sweep-note.tsx';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
}

export function LiveMove({ view, round, move }: Props & { readonly move: Move }) {
  const adjuster = adjusterOf(view.car.car, move);
  if (!adjuster) return null;
  const torqued = torqueKey(round.record.id, move);
  return (
    <Card tone="form" corner={move.corner} title={adjuster.name}>
      <AdjusterDrawing
        adjuster={adjuster}
        corner={move.corner}
        from={move.from}
        to={move.to}
        {...stacks(adjuster, move)}
      />
      <Expect view={view} round={round} corner={move.corner} reading={move.expectAfter} />
      <SweepNote corner={move.corner} before={round.record.reading} after={move.expectAfter} />
      <AxleGone reading={move.expectAfter} axle={axleOf(move.corner)} />
      <p class="instruction">{words.act(move.act, { length: units.value.length })}</p>
      {round.record.typed[standingKey(move.corner, move.adjuster)] === UNKNOWN && (
        <p class="soft">
          Where it stood was not known: turn it by this much from where it is. Its stop may come sooner.
        </p>
      )}
      <label class="torque">
        <input
          type="checkbox"
          checked={choice(view.visit.id, torqued) === 'yes'}
          onChange={(event) => choose(view.visit.id, { [torqued]: event.currentTarget.checked ? 'yes' : '' })}
        />
        {adjuster.torque ? (
          <span>
            Torque: <strong>maker’s figure, yours on file: {adjuster.torque}</strong>
          </span>
        ) : (
          <span>Tightened to the maker’s figure. None on file for this car.</span>
        )}
      </label>
    </Card>
  );
}

interface ExpectProps extends Props {
  readonly corner: Corner;
  readonly reading: Reading;
}

/** What the rack reads at this wheel once the move is made, in the form in which it was measured. */
function Expect({ view, round, corner, reading }: ExpectProps) {
  const { car } = view.car;
  const shown = fieldsOf(car, formOfRecord(round.record)).flatMap(({ id, where, angle }) => {
    const value = where === corner || where === axleOf(corner) ? angleOf(reading, where, angle) : undefined;
    return value === undefined ? [] : [{ id, angle, value }];
  });
  if (shown.length === 0) return null;
  return (
    <section class="expect" aria-label="What the rack will show">
      <h3 class="soft">When it is right, the rack shows</h3>
      <dl>
        {shown.map(({ id, angle, value }) => (
          <div key={id}>
            <dt>{angle === 'sai' ? 'SAI' : angleWord(angle).toLowerCase()}</dt>
            <dd>{valueText(angle, value, car.wheel.rimDiameter)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
