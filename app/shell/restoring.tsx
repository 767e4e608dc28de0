/** How far a restore or an undo is. The screens wait under it: what they show is changing behind them. */
import { useEffect, useRef } from 'preact/hooks';
import { store } from '../store/index.ts';

/** One that is over sooner is not shown, ms. */
const SOON = 400;

export function Restoring() {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const timer = setTimeout(() => dialog.current?.showModal(), SOON);
    return () => clearTimeout(timer);
  }, []);
  const { through = 0, all = 0 } = store.restoring.value ?? {};
  return (
    <dialog ref={dialog} class="card restoring" aria-label="Restoring" onCancel={(event) => event.preventDefault()}>
      <p>Keep this open until it is done.</p>
      <progress max={Math.max(all, 1)} value={through} />
      <p class="soft">{all > 0 ? `${figure(through)} of ${figure(all)} records` : 'Keeping a copy of what is here'}</p>
    </dialog>
  );
}

const figure = (count: number): string => new Intl.NumberFormat('en-GB').format(count);
