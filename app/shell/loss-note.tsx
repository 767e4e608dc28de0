/** First load. What the browser has lost of the records, said at once and until somebody has seen it; and what can be done. */
import { hashOf } from '../routes.ts';
import { fullTime } from '../state/days.ts';
import { type Loss, store } from '../store/index.ts';
import { Lazy } from './lazy.tsx';

const copyOffer = async () => (await import('./copy-offer.tsx')).CopyOffer;

export function LossNote() {
  const loss = store.loss.value;
  if (!loss) return null;
  return (
    <div class="note-bar note-bad note-tall" role="alert">
      <span>{lossText(loss)}</span>
      <span class="note-ways note-column">
        {loss.kind !== 'put-back' && <Lazy load={copyOffer} props={{}} quiet />}
        <a class="quiet" href={hashOf({ screen: 'settings' })}>
          {loss.kind === 'put-back' ? 'Save to a file' : 'Restore from a file'}
        </a>
        <button type="button" class="quiet" onClick={() => store.lossSeen()}>
          I have seen it
        </button>
      </span>
    </div>
  );
}

function lossText(loss: Loss): string {
  if (loss.kind === 'put-back') {
    return `The browser cleared the records of this phone while the app was open. All that it held is written back: ${loss.records} ${loss.records === 1 ? 'record' : 'records'}. Save everything to a file now.`;
  }
  const last = loss.backup
    ? ` They were last saved to a file ${fullTime(loss.backup)}: restore that one.`
    : ' If you have a file of them, restore it.';
  if (loss.kind === 'gone') return `The records of this phone are gone: its browser has cleared them.${last}`;
  const writes = loss.writes === 1 ? 'The last change' : `The last ${loss.writes} changes`;
  return `${writes} to the records were saved, and the browser has lost them since. Look through what you did last.${last}`;
}
