/** The worker that reads a backup: a file comes in, then a piece goes out each time that one is asked for. */
import type { CheckedBackup } from '../../core/records/envelope.ts';
import { toWire, type WireError } from '../engine/messages.ts';
import { readBackup } from './read-backup.ts';

/** Page → worker: the file, then `more` for each piece. */
export type Asked = { readonly file: Blob } | { readonly more: true };
/** Worker → page: `ready` once, then an answer to each `more`. Errors cross as plain data. */
export type Told =
  | { readonly ready: true }
  | { readonly piece: Pick<CheckedBackup, 'made' | 'records'>; readonly aside: readonly Aside[] }
  | { readonly end: true }
  | { readonly error: WireError };
export type Aside = Omit<CheckedBackup['aside'][number], 'error'> & { readonly error: WireError };

const port = globalThis as unknown as {
  onmessage: (event: MessageEvent<Asked>) => void;
  postMessage: (message: Told) => void;
};

let pieces: AsyncGenerator<CheckedBackup, undefined> | undefined;

async function next(): Promise<Told> {
  try {
    const read = (await pieces?.next())?.value;
    if (!read) return { end: true };
    const { aside, ...piece } = read;
    return { piece, aside: aside.map((one) => ({ ...one, error: toWire(one.error) })) };
  } catch (error) {
    return { error: toWire(error) };
  }
}

port.onmessage = ({ data }) => {
  if ('file' in data) pieces = readBackup(data.file);
  else void next().then((answer) => port.postMessage(answer));
};
port.postMessage({ ready: true });
