import type { WorkerLike } from '../../app/engine/client.ts';
import type { Answer, Call } from '../../app/engine/messages.ts';

/** A worker that the test plays: what was sent to it, and ways to answer. */
export class FakeWorker implements WorkerLike {
  onmessage: Worker['onmessage'] = null;
  onmessageerror: Worker['onmessageerror'] = null;
  onerror: Worker['onerror'] = null;
  readonly sent: Call[] = [];
  ended = false;

  postMessage(message: unknown): void {
    // As a real worker does: what cannot be cloned throws, and nothing is shared.
    this.sent.push(structuredClone(message) as Call);
  }
  terminate(): void {
    this.ended = true;
  }
  say(answer: Answer): void {
    this.onmessage?.call(this as never, { data: structuredClone(answer) } as MessageEvent);
  }
  answer(result: unknown): void {
    this.say({ id: this.sent.at(-1)?.id ?? -1, result });
  }
  crash(): void {
    this.onerror?.call(this as never, new Event('error') as ErrorEvent);
  }
}
