/** First load. What only a practice car has, fetched for one. */
import { Lazy } from '../../shell/lazy.tsx';
import type { VisitView } from '../../state/visits.ts';

const loadTake = async () => (await import('./practice-take.tsx')).PracticeTake;

export const PracticeButton = ({ view }: { readonly view: VisitView }) =>
  view.car.practice ? <Lazy load={loadTake} props={{ view }} quiet /> : null;
