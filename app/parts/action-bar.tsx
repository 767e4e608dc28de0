import type { ComponentChildren } from 'preact';

export interface Action {
  label: string;
  onPress: () => void;
  disabled?: boolean;
}

export interface ActionBarProps {
  /** What was just done, above the actions. */
  note?: ComponentChildren;
  /** The one thing to do next. */
  primary?: Action;
  /** Up to three quieter ones beneath. */
  secondary?: readonly Action[];
}

/** Under the thumb at the foot of a screen: one big action, two or three quieter ones. */
export function ActionBar({ note, primary, secondary = [] }: ActionBarProps) {
  return (
    <div class="dock action-bar">
      {note}
      {primary && <ActionButton action={primary} kind="primary" />}
      {secondary.length > 0 && (
        <div class="action-bar-rest">
          {secondary.map((action) => (
            <ActionButton key={action.label} action={action} kind="secondary" />
          ))}
        </div>
      )}
    </div>
  );
}

function ActionButton({ action, kind }: { action: Action; kind: 'primary' | 'secondary' }) {
  return (
    <button type="button" class={`action-bar-${kind}`} disabled={action.disabled} onClick={action.onPress}>
      {action.label}
    </button>
  );
}
