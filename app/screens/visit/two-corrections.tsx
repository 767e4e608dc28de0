/** A reading that two phones corrected: which figures are in use, which the other has, and the choice between them. */
import { Card } from '../../parts/card.tsx';
import { clock, shortDay } from '../../state/days.ts';
import { differencesOf, otherCorrections, standsApart, takeCorrection } from '../../state/two-corrections.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
}

const timeOf = (at: string): string => `${shortDay(at)}, ${clock(at)}`;

export function TwoCorrections({ view, round }: Props) {
  const [other] = otherCorrections(view, round);
  if (!other) return null;
  const { record } = round;
  return (
    <Card title="Corrected on another phone too" tone="caution">
      <table class="apart">
        <thead>
          <tr>
            <th />
            <th scope="col">In use</th>
            <th scope="col">Other</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">taken</th>
            <td>{timeOf(record.at)}</td>
            <td>{timeOf(other.at)}</td>
          </tr>
          {differencesOf(view, record, other).map(({ what, inUse, other }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>{inUse}</td>
              <td>{other}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {standsApart(record, other) && <p class="soft">They also differ in where the adjusters stood.</p>}
      <div class="pair">
        <button type="button" class="quiet" onClick={() => takeCorrection(view, round, other)}>
          Use the other
        </button>
        <button type="button" class="quiet" onClick={() => takeCorrection(view, round, record)}>
          Keep this one
        </button>
      </div>
      <p class="soft after-pair">Neither is lost: both stay in the records.</p>
    </Card>
  );
}
