/** What the first reading of a visit points to beside adjustment, said once the moves are measured. */
import { isAxle } from '../../../core/corners.ts';
import { Card } from '../../parts/card.tsx';
import { useHints } from '../../state/planning.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { words } from '../../state/words.ts';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
}

export function PointsTo({ view, round }: Props) {
  const { value = [] } = useHints(view, round);
  // Where the places of the adjusters come first there is nothing to look for yet.
  const found = value.filter(({ kind }) => kind !== 'places-first');
  if (found.length === 0) return null;
  return (
    <Card tone="caution" title="Adjusted, and still worth a look">
      <p>As it came in, the two sides differed as they do with a bent part:</p>
      <ul>
        {found.map((hint) => (
          <li key={JSON.stringify(hint)}>
            {isAxle(hint.where) ? '' : `${hint.where}: `}
            {words.hint(hint)}
          </li>
        ))}
      </ul>
    </Card>
  );
}
