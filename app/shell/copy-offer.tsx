/** The copy that is kept beside the database, offered where the browser has lost what was in it. */
import { useEffect, useState } from 'preact/hooks';
import { fullTime } from '../state/days.ts';
import { store } from '../store/index.ts';

export function CopyOffer() {
  const [made, setMade] = useState<string | undefined>();
  const [problem, setProblem] = useState('');
  useEffect(() => {
    store.copyMade().then(setMade, () => undefined);
  }, []);
  if (!made) return null;
  const putBack = () => {
    setProblem('');
    store.putBackCopy().catch((error: unknown) => setProblem(error instanceof Error ? error.message : String(error)));
  };
  return (
    <button type="button" class="quiet" onClick={putBack}>
      {problem || `Put back the copy of ${fullTime(made)}`}
    </button>
  );
}
