/** The end of a practice visit: which part was bent, and what the readings made of it. */

import { Card } from '../../parts/card.tsx';
import { bendOf } from '../../practice/bend.ts';
import { angleText } from '../../state/units.ts';
import type { VisitView } from '../../state/visits.ts';

export function PracticeHidden({ view }: { readonly view: VisitView }) {
  const { corner, part, camber, sai } = bendOf(view.visit.id, view.car.car.front.suspension);
  const said = (degrees: number): string => `${angleText(Math.abs(degrees))} ${degrees > 0 ? 'up' : 'down'}`;
  return (
    <div class="not-printed">
      <Card title="What was hidden in this car">
        <p>
          The {corner} {part} is bent: it put {corner} camber {said(camber)}
          {sai === 0 ? ' and left SAI as it was' : ` and SAI ${said(sai)}`}. Moves can bring the wheel into its window;
          the part is still bent. On a real car it is replaced, and the car measured again.
        </p>
        <p class="soft">Each practice visit hides another one.</p>
      </Card>
    </div>
  );
}
