/** First load. What the engine is asked, as the screens wait for it: an answer, an error or neither yet. */
import { useEffect, useState } from 'preact/hooks';

export interface Asked<T> {
  readonly value?: T;
  readonly error?: Error;
  readonly busy: boolean;
}

/** Answers by what was asked: the core is deterministic, so the same question has the same answer. */
const answers = new Map<string, unknown>();
const MOST = 40;

/**
 * Asks once for every new `question` (a text that says all the answer depends on); undefined asks nothing. A question
 * that was overtaken is forgotten.
 */
export function useAsked<T>(question: string | undefined, ask: (signal: AbortSignal) => Promise<T>): Asked<T> {
  const [failed, setFailed] = useState<{ question: string; error: Error } | undefined>();
  const [, redraw] = useState(0);
  const known = question !== undefined && answers.has(question);
  useEffect(() => {
    if (question === undefined || answers.has(question)) return;
    const over = new AbortController();
    ask(over.signal).then(
      (value) => {
        if (answers.size >= MOST) answers.delete([...answers.keys()][0] ?? '');
        answers.set(question, value);
        if (!over.signal.aborted) redraw((count) => count + 1);
      },
      (error: Error) => {
        if (!over.signal.aborted && error.name !== 'AbortError') setFailed({ question, error });
      },
    );
    return () => over.abort();
  }, [question]);
  // What is kept under a question is what this hook put there, so it has the type of the answer.
  if (known) return { value: answers.get(question) as T, busy: false };
  if (question !== undefined && failed?.question === question) return { error: failed.error, busy: false };
  return { busy: question !== undefined };
}
