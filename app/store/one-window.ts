/**
 * One window at a time has a thing in hand: the others see it and can take it over. A window that is put away
 * lets go of it. Without locks, in an old browser, every window has it.
 */
export interface Hold {
  /** Takes it from the window that has it. */
  take(): void;
  end(): void;
}

/** @param told whether this window has it, whenever that changes */
export function holdAlone(name: string, told: (has: boolean) => void): Hold {
  const locks = globalThis.navigator?.locks;
  if (!locks) return { take: () => undefined, end: () => undefined };
  let turn = 0;
  let letGo = (): void => undefined;

  /** Asks for it, first in this way, then by waiting for its turn. */
  async function ask(first: LockOptions): Promise<void> {
    letGo();
    turn += 1;
    const mine = turn;
    const isOver = () => mine !== turn;
    const waiting = new AbortController();
    let release = (): void => undefined;
    letGo = () => {
      turn += 1;
      release();
      waiting.abort();
    };
    for (let how = first; !isOver(); how = { signal: waiting.signal }) {
      try {
        await locks.request(name, how, (lock) => {
          if (!lock || isOver()) return undefined;
          told(true);
          return new Promise<void>((done) => {
            release = done;
          });
        });
      } catch (error) {
        // Taken over by another window; anything else is a browser that gives no locks.
        if (!(error instanceof DOMException && error.name === 'AbortError')) return;
      }
      if (!isOver()) told(false);
    }
  }

  const begin = (): void => void ask({ ifAvailable: true });
  const onVisible = (): void => {
    if (document.visibilityState === 'hidden') letGo();
    else begin();
  };
  document.addEventListener('visibilitychange', onVisible);
  begin();
  return {
    take: () => void ask({ steal: true }),
    end() {
      document.removeEventListener('visibilitychange', onVisible);
      letGo();
    },
  };
}

/** How long a window waits for its turn, ms: one that hangs keeps no other from its work. */
const LONGEST_WAIT = 2_000;

/**
 * Work that one window does after the other, as far as the browser can tell them apart.
 * @param work hands over its answer, and lets the next one begin only when it ends
 */
export function inTurn<T>(name: string, work: (answer: (value: T) => void) => Promise<void>): Promise<T> {
  return new Promise((answer, failed) => {
    const locks = globalThis.navigator?.locks;
    const own = () => work(answer);
    if (!locks) own().catch(failed);
    else {
      const waiting = new AbortController();
      setTimeout(() => waiting.abort(), LONGEST_WAIT);
      // Refused, it has not been its turn.
      locks.request(name, { signal: waiting.signal }, own).catch(() => own().catch(failed));
    }
  });
}
