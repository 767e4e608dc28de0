/** Locks of a browser for its windows, as the platform has them: one holder a name, in turn, to be stolen or given up. */
interface Options {
  readonly signal?: AbortSignal;
  readonly ifAvailable?: boolean;
  readonly steal?: boolean;
}
type Work = (lock: object | null) => unknown;
interface Held {
  readonly stolen: (error: unknown) => void;
}

export function fakeLocks() {
  const holder = new Map<string, Held>();
  const waiting = new Map<string, (() => void)[]>();
  const aborted = () => new DOMException('not any more', 'AbortError');

  async function hold(name: string, work: Work): Promise<unknown> {
    let stolen: (error: unknown) => void = () => undefined;
    const taken = new Promise((_, reject) => {
      stolen = reject;
    });
    const mine = { stolen };
    holder.set(name, mine);
    try {
      return await Promise.race([Promise.resolve(work({ name })), taken]);
    } finally {
      if (holder.get(name) === mine) {
        holder.delete(name);
        waiting.get(name)?.shift()?.();
      }
    }
  }

  async function request(name: string, ...given: [Work] | [Options, Work]): Promise<unknown> {
    const [options, work] = given.length === 1 ? [{}, given[0]] : given;
    const { signal, ifAvailable, steal }: Options = options;
    if (signal?.aborted) throw aborted();
    const held = holder.get(name);
    if (held && steal) {
      held.stolen(aborted());
      return hold(name, work);
    }
    if (held && ifAvailable) return work(null);
    if (held) {
      await new Promise<void>((begin, refuse) => {
        const queue = waiting.get(name) ?? [];
        waiting.set(name, queue);
        queue.push(begin);
        signal?.addEventListener('abort', () => {
          const at = queue.indexOf(begin);
          if (at >= 0) queue.splice(at, 1);
          refuse(aborted());
        });
      });
    }
    return hold(name, work);
  }
  return { request, isHeld: (name: string) => holder.has(name) };
}
