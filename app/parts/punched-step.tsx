import type { ComponentChildren } from 'preact';

export interface PunchedStepProps {
  state: 'done' | 'live' | 'later';
  title: ComponentChildren;
  /** Beside the title: "7 of 7", "10 readings". */
  note?: ComponentChildren;
  /** At the right end: "09:12", "saved", "round 1". */
  time?: ComponentChildren;
  /** A done step may be opened again: makes its head a button. */
  onPick?: () => void;
  children?: ComponentChildren;
}

const stateWords = { done: 'done', live: 'now', later: 'later' } as const;

/** One step of the visit on the job card, with its punched hole in the margin. */
export function PunchedStep({ state, title, note, time, onPick, children }: PunchedStepProps) {
  const head = (
    <>
      <span class="step-title">{title}</span>
      {note !== undefined && <span class="step-note">{note}</span>}
      {time !== undefined && <span class="step-time">{time}</span>}
    </>
  );
  return (
    <section
      class={`step step-${state}${onPick ? ' step-pick' : ''}`}
      aria-current={state === 'live' ? 'step' : undefined}
    >
      <span class="step-hole">
        <span class="visually-hidden">{stateWords[state]}</span>
      </span>
      {onPick ? (
        <h2>
          <button type="button" class="step-head" onClick={onPick}>
            {head}
          </button>
        </h2>
      ) : (
        <h2 class="step-head">{head}</h2>
      )}
      {children !== undefined && <div class="step-body">{children}</div>}
    </section>
  );
}
