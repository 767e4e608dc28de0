/** The practice car has a rack of its own: one quiet button takes its reading. */

import { useState } from 'preact/hooks';
import { draft, keepDraft, records } from '../../state/records.ts';
import { entryDraft } from '../../state/stage.ts';
import { END } from '../../state/typing.ts';
import { lastSettings, type VisitView } from '../../state/visits.ts';

export function PracticeTake({ view }: { readonly view: VisitView }) {
  const [failed, setFailed] = useState('');
  const take = async () => {
    try {
      const { practiceReading } = await import('../../practice/rack.ts');
      const texts = await practiceReading(view, lastSettings(records.value, view.car.id));
      const id = entryDraft(view.visit.id);
      keepDraft(id, { ...draft(id)?.texts, ...texts }, END);
    } catch (error) {
      setFailed(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <>
      <button type="button" class="quiet wide" onClick={() => void take()}>
        Take the practice rack’s reading
      </button>
      {failed && <p role="alert">{failed}</p>}
    </>
  );
}
