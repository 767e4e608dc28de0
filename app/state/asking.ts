/** What the engine is asked, as the screens wait for it: an answer, an error or neither yet. */
import { useEffect, useRef, useState } from 'preact/hooks';

export interface Asked<T> {
  readonly value?: T;
  readonly error?: Error;
  readonly busy: boolean;
}

/** Answers by what was asked: the core is deterministic, so the same question has the same answer. */
const answers = new Map<string, unknown>();
const MOST = 40;

interface Pending {
  readonly answer: Promise<unknown>;
  readonly over: AbortController;
  waiting: number;
}
/** Questions under way. Whoever asks the same joins in; one that nobody waits for any more is given up. */
const pending = new Map<string, Pending>();
/** ms that a question is kept going for the next screen, which may ask the same. */
const GRACE = 500;

function join(question: string, ask: (signal: AbortSignal) => Promise<unknown>): Pending {
  const known = pending.get(question);
  if (known) {
    known.waiting += 1;
    return known;
  }
  const over = new AbortController();
  const forget = () => {
    if (pending.get(question)?.over === over) pending.delete(question);
  };
  over.signal.addEventListener('abort', forget);
  const answer = ask(over.signal).then(
    (value) => {
      forget();
      if (answers.size >= MOST) answers.delete([...answers.keys()][0] ?? '');
      answers.set(question, value);
      return value;
    },
    (error) => {
      forget();
      throw error;
    },
  );
  const own: Pending = { answer, over, waiting: 1 };
  pending.set(question, own);
  return own;
}

function leave(one: Pending): void {
  one.waiting -= 1;
  setTimeout(() => {
    if (one.waiting === 0) one.over.abort();
  }, GRACE);
}

/**
 * Asks once for every new `question` (a text that says all the answer depends on); undefined asks nothing. A question
 * that was overtaken is forgotten.
 */
export function useAsked<T>(question: string | undefined, ask: (signal: AbortSignal) => Promise<T>): Asked<T> {
  const [failed, setFailed] = useState<{ question: string; error: Error } | undefined>();
  const [, redraw] = useState(0);
  // What is shown stays, whatever others have asked since.
  const held = useRef<{ readonly question: string; readonly value: unknown } | undefined>(undefined);
  if (question !== undefined && answers.has(question)) held.current = { question, value: answers.get(question) };
  const known = question !== undefined && held.current?.question === question;
  useEffect(() => {
    if (question === undefined || known) return;
    const draw = () => redraw((count) => count + 1);
    // Another screen's asking may have been answered since this one was drawn.
    if (answers.has(question)) {
      draw();
      return;
    }
    let here = true;
    const one = join(question, ask);
    one.answer.then(
      () => here && draw(),
      (error: Error) => {
        if (here && error.name !== 'AbortError') setFailed({ question, error });
      },
    );
    return () => {
      here = false;
      leave(one);
    };
  }, [question]);
  // What is kept under a question is what this hook put there, so it has the type of the answer.
  if (known) return { value: held.current?.value as T, busy: false };
  if (question !== undefined && failed?.question === question) return { error: failed.error, busy: false };
  return { busy: question !== undefined };
}
