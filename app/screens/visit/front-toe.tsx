/** What front toe is read against: asked once in the life of a shop, then shown, and changed for one reading at a touch. */
import './front-toe.css';
import type { ToeReference } from '../../../core/reading/toe-reference.ts';
import { againstText, lineText } from '../../state/against.ts';
import { setToeReference } from '../../state/preferences.ts';
import { draft } from '../../state/records.ts';
import { entryDraft } from '../../state/stage.ts';
import { END } from '../../state/typing.ts';
import { asksReference, changeForm, entryForm, typedRecord } from '../../state/visit-actions.ts';
import type { VisitView } from '../../state/visits.ts';

export function FrontToe({ view }: { readonly view: VisitView }) {
  const { reference } = entryForm(view);
  if (asksReference(view)) return <Question view={view} reference={reference} />;
  const walked = draft(entryDraft(view.visit.id))?.cursor === END;
  // Once all is typed it shows whether there is a thrust line at all.
  const record = typedRecord(view, {});
  if (walked && !record.reading.toeReference) return <p class="soft">{againstText(record)}</p>;
  const other: ToeReference = reference === 'centreline' ? 'thrust-line' : 'centreline';
  return (
    <p class="front-toe soft">
      Front toe against {lineText(reference)}
      <button
        type="button"
        class="quiet"
        aria-label={`Change it to ${lineText(other)} for this reading`}
        onClick={() => changeForm(view, { reference: other })}
      >
        Change
      </button>
    </p>
  );
}

function Question({ view, reference }: { readonly view: VisitView; readonly reference: ToeReference }) {
  const answer = (value: ToeReference) => {
    setToeReference(value);
    changeForm(view, { reference: value });
  };
  return (
    <>
      <fieldset class="choice">
        <legend>Your rack reads front toe against</legend>
        <button type="button" aria-pressed={reference === 'thrust-line'} onClick={() => answer('thrust-line')}>
          the thrust line
        </button>
        <button type="button" aria-pressed={reference === 'centreline'} onClick={() => answer('centreline')}>
          the centre line
        </button>
      </fieldset>
      <p class="soft">Most four-wheel racks: the thrust line. Asked once; it can be changed in the settings.</p>
    </>
  );
}
