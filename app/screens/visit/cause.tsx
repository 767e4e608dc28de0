/** Why a re-measure is not as predicted: the likeliest cause in a sentence, the figures behind it, and one touch to answer. */
import './cause.css';
import type { Explanation } from '../../../core/contract.ts';
import { Card } from '../../parts/card.tsx';
import { answerTo, canCorrect, correctedIn, fitsTyping, saidNo, saidYes, takeBackYes } from '../../state/cause.ts';
import type { Compared } from '../../state/comparing.ts';
import { fieldWord } from '../../state/fields.ts';
import { chanceText } from '../../state/move-words.ts';
import { units } from '../../state/preferences.ts';
import { valueText } from '../../state/units.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { words } from '../../state/words.ts';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly before: RoundView | undefined;
  readonly rows: readonly Compared[];
  readonly causes: readonly Explanation[];
}

/** What is less likely than this beside the first is not worth a line. */
const WORTH_A_LINE = 0.05;

/** Whether there is a cause to name; else all is within what the gauge, the dimensions and the hand leave open. */
export const isToldOf = (view: VisitView, round: RoundView, causes: readonly Explanation[]): boolean => {
  const [first] = leftOf(view, round, causes);
  return first !== undefined && first.cause !== 'noise';
};

/** Those that can be and that nobody has said no to, as likely as they are without the others. */
function leftOf(view: VisitView, round: RoundView, causes: readonly Explanation[]): readonly Explanation[] {
  const open = causes.filter((one) => !answerTo(view, round, one) && fitsTyping(view, round, one));
  const all = open.reduce((sum, { probability }) => sum + probability, 0);
  return open.map((one) => ({ ...one, probability: one.probability / all }));
}

export function CauseCard(props: Props) {
  const { view, round, before, causes } = props;
  const [first, ...others] = leftOf(view, round, causes);
  const corrected = correctedIn(view, [round, before]);
  const seen = causes.filter((one) => answerTo(view, round, one).startsWith('yes'));
  return (
    <>
      {corrected && (
        <div class="cause-undo" role="status">
          <span>Corrected in the records.</span>
          <button type="button" class="quiet" onClick={() => takeBackYes(view, corrected)}>
            Undo
          </button>
        </div>
      )}
      {seen.map((one) => (
        <p key={one.text} class="plan-note">
          Taken for it: {said(view, one)}
        </p>
      ))}
      {seen.length === 0 && first && first.cause !== 'noise' && <Likeliest {...props} first={first} others={others} />}
    </>
  );
}

type OneOf = Props & { readonly first: Explanation; readonly others: readonly Explanation[] };

function Likeliest({ view, round, rows, first, others }: OneOf) {
  const also = others.filter(({ cause, probability }) => cause !== 'noise' && probability >= WORTH_A_LINE).slice(0, 2);
  return (
    <Card tone="caution" title="Not all came as predicted">
      <p class="cause">
        <span>{said(view, first)}</span>
        <strong>
          {chanceText(first.probability)}
          <small class="soft"> likely</small>
        </strong>
      </p>
      <Facts view={view} rows={rows} first={first} />
      <div class="pair cause-answers">
        <button type="button" class="cause-yes" onClick={() => saidYes(view, round, first)}>
          {first.cause === 'bent' || canCorrect(view, round, first) ? 'Yes, that was it' : 'Read it again'}
        </button>
        <button type="button" class="quiet" onClick={() => saidNo(view, round, first)}>
          No, that is right
        </button>
      </div>
      {also.map((one) => (
        <button key={one.text} type="button" class="quiet wide cause-also" onClick={() => saidYes(view, round, one)}>
          <span>Or: {said(view, one)}</span>
          <strong>{chanceText(one.probability)}</strong>
        </button>
      ))}
    </Card>
  );
}

const said = ({ car }: VisitView, one: Explanation): string =>
  words.explanation(one, units.value, (angle, degrees) => valueText(angle, degrees, car.car.wheel.rimDiameter));

/** Angle by angle what was to come, what would have by this cause, and what was read. */
function Facts({ view, rows, first }: Pick<OneOf, 'view' | 'rows' | 'first'>) {
  const rim = view.car.car.wheel.rimDiameter;
  const all = rows.flatMap((row) => {
    const left = first.left.find(({ corner, angle }) => corner === row.where && angle === row.angle);
    return left && row.predicted !== undefined ? [{ row, by: left.by }] : [];
  });
  const parted = all.filter(({ row }) => row.parted !== undefined);
  const told = parted.length > 0 ? parted : all.filter(({ row }) => row.where === first.corner);
  if (told.length === 0) return null;
  const isOfMove = first.correction?.of !== 'reading';
  const show = ({ angle }: Compared, value: number) => valueText(angle, value, rim);
  return (
    <table class="apart cause-facts">
      <thead>
        <tr>
          <th />
          <th scope="col">to come</th>
          {isOfMove && <th scope="col">by this</th>}
          <th scope="col">read</th>
        </tr>
      </thead>
      <tbody>
        {told.map(({ row, by }) => (
          <tr key={row.id}>
            <th scope="row">{fieldWord(row)}</th>
            <td>{show(row, row.predicted ?? 0)}</td>
            {isOfMove && <td>{show(row, row.measured - by)}</td>}
            <td>{show(row, row.measured)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
