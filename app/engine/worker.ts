/** The worker around core: says that it is ready, then answers one call after another. */
import { answer } from './answer.ts';
import type { Answer, Call } from './messages.ts';

const port = globalThis as unknown as {
  onmessage: (event: MessageEvent<Call>) => void;
  postMessage: (message: Answer) => void;
};

port.onmessage = ({ data }) => port.postMessage(answer(data));
port.postMessage({ ready: true });
