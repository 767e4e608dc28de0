/** The page's side of the engine, with workers that the test plays. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createEngine } from '../../app/engine/client.ts';
import { type Answer, type Call, toWire } from '../../app/engine/messages.ts';
import type { Car, CarFile, Spec } from '../../core/contract.ts';
import { InputError } from '../../core/input-error.ts';
import { FakeWorker } from './fake-worker.ts';

const workers: FakeWorker[] = [];
const inPage = vi.fn(
  async () =>
    (call: Call): Answer => ({ id: call.id, result: `${call.name} in the page` }),
);
function engine(startWorker = start) {
  const { call, warm } = createEngine({ startWorker, inPage, patience: 1_000, idle: 5_000, runOut: 500 });
  /** One of which the latest wins. */
  const plan = (one: CarFile) => call('planOfFile', [one], { latest: 'plan' });
  return { call, plan, warm };
}
function start(): FakeWorker {
  const worker = new FakeWorker();
  workers.push(worker);
  return worker;
}
const last = (): FakeWorker => workers.at(-1) as FakeWorker;
const rehearsal = [{}, {}, 1] as unknown as [Car, Spec, number];
const request = (label: string) => ({ car: { label } }) as unknown as CarFile;

beforeEach(() => {
  vi.useFakeTimers();
  workers.length = 0;
  inPage.mockClear();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('the engine', () => {
  it('starts no worker until it is asked, sends nothing before the worker is ready', async () => {
    const { plan } = engine();
    expect(workers).toHaveLength(0);
    const planned = plan(request('a'));
    expect(last().sent).toEqual([]);
    last().say({ ready: true });
    expect(last().sent).toEqual([{ id: 1, name: 'planOfFile', args: [request('a')] }]);
    last().answer('moves');
    expect(await planned).toBe('moves');
  });

  it('runs one call at a time, in order', async () => {
    const { call } = engine();
    const answers = [call('validateCarFile', [{}]), call('parseCarFile', ['{}'])];
    last().say({ ready: true });
    expect(last().sent.map(({ name }) => name)).toEqual(['validateCarFile']);
    last().answer('first');
    expect(last().sent.map(({ name }) => name)).toEqual(['validateCarFile', 'parseCarFile']);
    last().answer('second');
    expect(await Promise.all(answers)).toEqual(['first', 'second']);
    expect(workers).toHaveLength(1);
  });

  it('lets the latest plan win, once the old one has run out', async () => {
    const { plan } = engine();
    const old = plan(request('old'));
    last().say({ ready: true });
    const fresh = plan(request('fresh'));
    await expect(old).rejects.toMatchObject({ name: 'AbortError' });
    expect(last().sent).toHaveLength(1);
    last().answer('old moves');
    expect(last().sent.map(({ args }) => args)).toEqual([[request('old')], [request('fresh')]]);
    vi.advanceTimersByTime(2_000);
    last().answer('fresh moves');
    expect(await fresh).toBe('fresh moves');
    expect(workers).toHaveLength(1);
    expect(last().ended).toBe(false);
  });

  it('ends the worker that still computes what nobody waits for', async () => {
    const { plan } = engine();
    const old = plan(request('old'));
    last().say({ ready: true });
    const newer = plan(request('newer'));
    vi.advanceTimersByTime(0);
    const fresh = plan(request('fresh'));
    await Promise.all([old, newer].map((one) => expect(one).rejects.toMatchObject({ name: 'AbortError' })));
    vi.advanceTimersByTime(499);
    expect(workers[0]?.ended).toBe(false);
    vi.advanceTimersByTime(1);
    expect(workers[0]?.ended).toBe(true);
    last().say({ ready: true });
    expect(last().sent.map(({ args }) => args)).toEqual([[request('fresh')]]);
    last().answer('fresh moves');
    expect(await fresh).toBe('fresh moves');
  });

  it('does not take up in the page what was given up when the worker dies', async () => {
    const { plan } = engine();
    const old = plan(request('old'));
    last().say({ ready: true });
    const fresh = plan(request('fresh'));
    await expect(old).rejects.toMatchObject({ name: 'AbortError' });
    last().crash();
    expect(await fresh).toBe('planOfFile in the page');
    expect(inPage).toHaveBeenCalledTimes(1);
  });

  it('drops a plan that was not begun without ending the worker, and leaves other calls alone', async () => {
    const { plan, call } = engine();
    const other = call('validateCarFile', [{}]);
    last().say({ ready: true });
    const old = plan(request('old'));
    const fresh = plan(request('fresh'));
    await expect(old).rejects.toMatchObject({ name: 'AbortError' });
    last().answer('assessed');
    expect(await other).toBe('assessed');
    last().answer('moves');
    expect(await fresh).toBe('moves');
    expect(workers).toHaveLength(1);
    expect(last().ended).toBe(false);
  });

  it('can be told to give up', async () => {
    const { call } = engine();
    const giveUp = new AbortController();
    const gone = call('validateCarFile', [{}], { signal: giveUp.signal });
    const stays = call('validateCarFile', [{}]);
    last().say({ ready: true });
    giveUp.abort();
    await expect(gone).rejects.toMatchObject({ name: 'AbortError' });
    last().answer('nobody waits for this');
    last().answer('stays');
    expect(await stays).toBe('stays');
    await expect(call('validateCarFile', [{}], { signal: AbortSignal.abort() })).rejects.toMatchObject({
      name: 'AbortError',
    });
  });

  it('takes no answer of an earlier call for the present one', async () => {
    const { call } = engine();
    const answered = call('validateCarFile', [{}]);
    last().say({ ready: true });
    last().say({ id: 99, result: 'stray' });
    last().answer('right');
    expect(await answered).toBe('right');
  });

  it('gives an InputError back as an InputError', async () => {
    const { plan } = engine();
    const planned = plan(request('a'));
    last().say({ ready: true });
    const refusal = new InputError('spec.front.camber.low', 2, { is: 'below-high', high: 1 });
    last().say({ id: 1, error: toWire(refusal) });
    const error = await planned.catch((caught: unknown) => caught);
    expect(error).toBeInstanceOf(InputError);
    expect(error).toMatchObject({
      field: 'spec.front.camber.low',
      value: 2,
      rule: { is: 'below-high', high: 1 },
      allowed: 'a number below high, 1',
      message: refusal.message,
    });
  });

  it('keeps the value of an InputError that cannot cross as its text', () => {
    const wire = toWire(new InputError('x', () => 1, { is: 'other' }));
    expect(structuredClone(wire)).toMatchObject({ name: 'InputError', field: 'x', value: '() => 1' });
  });

  it('refuses arguments that cannot cross, and goes on', async () => {
    const { call } = engine();
    const bad = call('validateCarFile', [{ f: () => 1 } as never]);
    const good = call('validateCarFile', [{}]);
    last().say({ ready: true });
    await expect(bad).rejects.toMatchObject({ name: 'DataCloneError' });
    last().answer('fine');
    expect(await good).toBe('fine');
  });

  it('ends an idle worker and starts another for the next call', async () => {
    const { call } = engine();
    const first = call('validateCarFile', [{}]);
    last().say({ ready: true });
    last().answer(1);
    await first;
    vi.advanceTimersByTime(4_999);
    expect(last().ended).toBe(false);
    vi.advanceTimersByTime(1);
    expect(last().ended).toBe(true);
    const second = call('validateCarFile', [{}]);
    expect(workers).toHaveLength(2);
    last().say({ ready: true });
    last().answer(2);
    expect(await second).toBe(2);
  });

  it('warms a worker call by call, behind what is asked for in earnest', async () => {
    const { warm, plan } = engine();
    const names = () => last().sent.map(({ name, args }) => `${name} ${args.length}`);
    warm('rehearse', [rehearsal, rehearsal]);
    warm('rehearse', [rehearsal]);
    last().say({ ready: true });
    const planned = plan(request('a'));
    expect(names()).toEqual(['rehearse 3']);
    last().answer(1);
    expect(names()).toEqual(['rehearse 3', 'planOfFile 1']);
    last().answer('the plan');
    expect(await planned).toBe('the plan');
    await vi.advanceTimersByTimeAsync(0);
    expect(names()).toEqual(['rehearse 3', 'planOfFile 1', 'rehearse 3']);
    expect(workers).toHaveLength(1);
  });

  it('says nothing of what is wrong with a warming, and can warm again', async () => {
    const { warm } = engine();
    warm('rehearse', [rehearsal, rehearsal]);
    last().say({ ready: true });
    last().say({ id: last().sent[0]?.id ?? -1, error: toWire(new Error('no such car')) });
    await vi.advanceTimersByTimeAsync(0);
    expect(last().sent).toHaveLength(1);
    warm('rehearse', [rehearsal]);
    expect(last().sent).toHaveLength(2);
  });

  it('does not end a worker that is busy for long', async () => {
    const { call } = engine();
    const long = call('validateCarFile', [{}]);
    last().say({ ready: true });
    vi.advanceTimersByTime(59_999);
    expect(last().ended).toBe(false);
    last().answer('done');
    expect(await long).toBe('done');
    vi.advanceTimersByTime(4_999);
    expect(last().ended).toBe(false);
  });
});

describe('without a worker', () => {
  it('runs in the page when none can be made', async () => {
    const { call } = engine(() => {
      throw new Error('no workers here');
    });
    expect(await call('validateCarFile', [{}])).toBe('validateCarFile in the page');
  });

  it('runs in the page when it fails to load, and tries no other', async () => {
    const { call } = engine();
    const answers = [call('validateCarFile', [{}]), call('parseCarFile', ['{}'])];
    last().crash();
    expect(await Promise.all(answers)).toEqual(['validateCarFile in the page', 'parseCarFile in the page']);
    expect(await call('validateCarFile', [{}])).toBe('validateCarFile in the page');
    expect(workers).toHaveLength(1);
    expect(last().ended).toBe(true);
  });

  it('runs in the page when it is never ready, also after an earlier call was given up', async () => {
    const { plan } = engine();
    const old = plan(request('old'));
    const fresh = plan(request('fresh'));
    await expect(old).rejects.toMatchObject({ name: 'AbortError' });
    vi.advanceTimersByTime(1_000);
    expect(await fresh).toBe('planOfFile in the page');
  });

  it('does the call over in the page when the worker dies under it', async () => {
    const { plan } = engine();
    const planned = plan(request('a'));
    last().say({ ready: true });
    last().crash();
    expect(await planned).toBe('planOfFile in the page');
  });

  it('warms nothing', async () => {
    const { warm, plan } = engine();
    warm('rehearse', [rehearsal, rehearsal]);
    const planned = plan(request('a'));
    last().crash();
    expect(await planned).toBe('planOfFile in the page');
    expect(inPage).toHaveBeenCalledTimes(1);
  });

  it('says so when core cannot be loaded at all', async () => {
    inPage.mockImplementationOnce(async () => {
      throw new Error('core did not load');
    });
    const { call } = engine(() => {
      throw new Error('no workers here');
    });
    await expect(call('validateCarFile', [{}])).rejects.toThrow('core did not load');
  });
});
