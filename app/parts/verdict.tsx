import type { ComponentChildren } from 'preact';

export type VerdictState = 'in' | 'edge' | 'out-high' | 'out-low' | 'unknown';

export interface VerdictProps {
  state: VerdictState;
  /** Shown beside the mark. The mark's own word is always there for a screen reader. */
  label?: ComponentChildren;
}

const words: Record<VerdictState, string> = {
  in: 'in the window',
  edge: 'near the edge of the window',
  'out-high': 'out of the window, high',
  'out-low': 'out of the window, low',
  unknown: 'not judged',
};

/** How a value stands to its window, by shape first: disc, half disc, hollow triangle pointing the way it is off. */
export function Verdict({ state, label }: VerdictProps) {
  return (
    <span class={`verdict verdict-${state}`}>
      <svg viewBox="0 0 16 16" width="15" height="15" aria-hidden="true">
        <Shape state={state} />
      </svg>
      <span class="visually-hidden">{words[state]}</span>
      {label !== undefined && <span class="verdict-label">{label}</span>}
    </span>
  );
}

function Shape({ state }: { state: VerdictState }) {
  switch (state) {
    case 'in':
      return <circle cx="8" cy="8" r="6" fill="currentColor" />;
    case 'edge':
      return (
        <>
          <circle cx="8" cy="8" r="5.5" />
          <path d="M8 2.5a5.5 5.5 0 0 0 0 11z" fill="currentColor" />
        </>
      );
    case 'out-high':
      return <path d="M8 2.5 14.5 13.5h-13z" />;
    case 'out-low':
      return <path d="M8 13.5 14.5 2.5h-13z" />;
    case 'unknown':
      return <path d="M4 8h8" />;
  }
}
