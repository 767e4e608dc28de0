/** A car from a file: what the terminal reads and another phone writes. It says what came in and what did not. */
import { useState } from 'preact/hooks';
import { engine } from '../../engine/index.ts';
import { go, hashOf } from '../../routes.ts';
import { keep, records } from '../../state/records.ts';
import { why } from '../../state/why.ts';
import { newId, now } from '../../store/index.ts';
import { draftFrom } from './form.ts';
import { type Incoming, incoming } from './import-file.ts';

interface Came extends Incoming {
  readonly id: string;
  readonly label: string;
}

export function ImportButton() {
  const [message, setMessage] = useState('');
  const [came, setCame] = useState<Came | undefined>();
  const open = async (file: File | undefined) => {
    if (!file) return;
    setMessage('');
    setCame(undefined);
    try {
      const one = await bringIn(await file.text());
      if (one.known) setCame(one);
      else go({ screen: 'car', id: one.id }, 'replace');
    } catch (error) {
      setMessage(why(error));
    }
  };
  return (
    <>
      <label class="field">
        <span>Or open a car file</span>
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
        {message && (
          <span class="wrong" role="alert">
            {message}
          </span>
        )}
      </label>
      {came && <Report came={came} />}
    </>
  );
}

/** Adds what is not here yet. @throws InputError, and then nothing is touched */
async function bringIn(text: string): Promise<Came> {
  const file = await engine.call('parseCarFile', [text]);
  const what = incoming(file, records.value, { now: now(), makeId: newId });
  if (what.entries.length > 0) keep(...what.entries);
  return { ...what, id: file.car.id, label: file.car.label };
}

function Report({ came: { id, label, isBack, added, changed, other } }: { readonly came: Came }) {
  const parts = [
    count(added.visits, 'visit'),
    count(added.readings, 'reading'),
    count(added.moves, 'move'),
    ...(changed > 0 ? [`more about ${count(changed, 'record')} that ${changed === 1 ? 'was' : 'were'} here`] : []),
  ].filter(Boolean);
  const take = () => {
    if (!other) return;
    draftFrom(other, 'The build as the file has it');
    go({ screen: 'build', id });
  };
  return (
    <section class="plan-note came-in" role="status">
      <p>
        {label} was here already{isBack && ', deleted; it is brought back'}.{' '}
        {parts.length > 0 ? `Came in: ${parts.join(', ')}.` : 'Nothing in the file is new: all its visits are here.'}
      </p>
      {other && (
        <>
          <p>The file’s build or windows differ from this phone’s. Both are kept, and this phone’s is planned with.</p>
          <button type="button" class="quiet wide" onClick={take}>
            Look at the file’s build
          </button>
        </>
      )}
      <a class="quiet wide" href={hashOf({ screen: 'car', id })}>
        To {label}
      </a>
    </section>
  );
}

const count = (n: number, word: string): string => (n === 0 ? '' : `${n} ${word}${n === 1 ? '' : 's'}`);
