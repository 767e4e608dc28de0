/** Tabs of one database tell one another of changes, and nobody who has gone, nor those of another. */
import { afterEach, expect, it, vi } from 'vitest';
import { joinTabs, type Tabs } from '../../app/store/tabs.ts';
import { freshName } from './records.ts';

const joined: Tabs[] = [];
function join(name: string) {
  const changed = vi.fn();
  const tabs = joinTabs(name, changed);
  joined.push(tabs);
  return { ...tabs, changed };
}
afterEach(() => {
  for (const tabs of joined.splice(0)) tabs.close();
  vi.unstubAllGlobals();
});

it('a change is told to the other tabs of its database, each time, and not to the one that made it', async () => {
  const name = freshName();
  const [here, other, there] = [join(name), join(`${name}-other`), join(name)];
  here.announce();
  here.announce();
  await vi.waitFor(() => expect(there.changed).toHaveBeenCalledTimes(2), { interval: 2 });
  expect(here.changed).not.toHaveBeenCalled();
  expect(other.changed).not.toHaveBeenCalled();
});

it('a tab that has closed is told nothing more', async () => {
  const name = freshName();
  const [here, gone, last] = [join(name), join(name), join(name)];
  gone.close();
  here.announce();
  // Told after those that joined before it.
  await vi.waitFor(() => expect(last.changed).toHaveBeenCalled(), { interval: 2 });
  expect(gone.changed).not.toHaveBeenCalled();
});

it('a browser in which tabs cannot talk is on its own', () => {
  vi.stubGlobal('BroadcastChannel', undefined);
  const { announce, close, changed } = join(freshName());
  announce();
  close();
  expect(changed).not.toHaveBeenCalled();
});
