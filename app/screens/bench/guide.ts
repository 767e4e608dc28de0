/** Where a hand is in a tool: the first step that still needs a figure is the one under way. */
import type { PunchedStepProps } from '../../parts/punched-step.tsx';
import type { Step, Texts } from './tool.ts';

type State = PunchedStepProps['state'];

/** Of every step, and of the result behind them. */
export function statesOf(
  texts: Texts,
  steps: readonly Step[],
  isWorkedOut: boolean,
): { readonly steps: readonly State[]; readonly result: State } {
  const next = steps.findIndex((step) => isOpen(texts, step));
  return {
    steps: steps.map((_, i) => (next < 0 || i < next ? 'done' : i === next ? 'live' : 'later')),
    result: next < 0 ? 'live' : isWorkedOut ? 'done' : 'later',
  };
}

const isOpen = (texts: Texts, { asks = [], optional, isDone = true }: Step): boolean =>
  !optional && (!isDone || asks.flat().some((ask) => !ask.optional && !texts[ask.id]?.trim()));
