/**
 * What the app does and shows, told to the outside as it happens: each write that is asked for, and each screen with its
 * save state. Runs in the page, beside the app and before it; knows nothing of its code.
 */

/** A record by store, id and text; no text where it is thrown away. */
export type Written = readonly [store: string, id: string, text?: string];

/** What a person would look for after a start. */
export interface Screen {
  readonly hash: string;
  readonly title: string;
  readonly step: string;
  /** "LF Caster: 4.50", and of the ticks and fields of a card what is in them. */
  readonly cells: readonly string[];
  readonly active: string;
  readonly made: number;
}

export type Noted =
  | { readonly kind: 'asked'; readonly bulk: boolean; readonly changes: readonly Written[] }
  | { readonly kind: 'screen'; readonly state: string; readonly said: string; readonly screen: Screen };

declare global {
  interface Window {
    noted(text: string): void;
    /** A restore or its undo is under way: what it writes is said to be saved when that is said. */
    bulk: boolean;
    lookAtScreen(): Screen;
  }
}

/** Handed to the page as it stands here: it may know nothing that is outside of it. */
export function note(): void {
  let asked: Written[] = [];
  let last = '';
  const tell = (what: Noted): void => window.noted(JSON.stringify(what));
  const ask = (change: Written): void => {
    if (asked.length === 0) {
      queueMicrotask(() => {
        tell({ kind: 'asked', bulk: Boolean(window.bulk), changes: asked });
        asked = [];
      });
    }
    asked.push(change);
  };
  const { put, delete: remove } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (record, ...key) {
    const request = put.call(this, record, ...key);
    // What an undo of a restore needs may be as large as all the rest.
    ask([this.name, record.id, record.id === 'undo-restore' ? '' : JSON.stringify(record)]);
    return request;
  };
  IDBObjectStore.prototype.delete = function (id) {
    const request = remove.call(this, id);
    ask([this.name, String(id)]);
    return request;
  };

  const all = <T extends Element>(selector: string): T[] => [...document.querySelectorAll<T>(selector)];
  const text = (selector: string): string => document.querySelector(selector)?.textContent ?? '';
  window.lookAtScreen = () => {
    const keys = all<HTMLButtonElement>('.step-live .reading-grid button[aria-pressed]');
    const fields = all<HTMLInputElement>('.step-live input:not([type=file]), .step-live textarea');
    const contentOf = (field: HTMLInputElement) => (field.type === 'checkbox' ? field.checked : field.value);
    return {
      hash: location.hash,
      title: text('h1'),
      step: text('.step-live .step-title'),
      cells: [...keys.map((key) => key.ariaLabel ?? ''), ...fields.map((field) => `${contentOf(field)}`)],
      active: keys.find((key) => key.ariaPressed === 'true')?.ariaLabel ?? '',
      made: all('.move-made').length,
    };
  };
  const look = (): void => {
    const state = text('.save-mark');
    const said = all('main [role=status]')
      .map(({ textContent }) => textContent)
      .join(' ');
    const seen: Noted = { kind: 'screen', state, said, screen: window.lookAtScreen() };
    const now = JSON.stringify(seen);
    // Before anything is drawn there is nothing to come back to.
    if (now === last || seen.screen.title === '') return;
    last = now;
    window.noted(now);
  };
  new MutationObserver(look).observe(document, {
    childList: true,
    subtree: true,
    characterData: true,
    attributes: true,
  });
}
