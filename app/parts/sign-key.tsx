/** ± beside a field that may be below zero: the number keyboards of some phones have no minus. */

/** A text with its sign changed. */
export const flipped = (text: string): string => (/^\s*[−-]/.test(text) ? text.replace(/^\s*[−-]/, '') : `−${text}`);

interface Props {
  readonly text: string;
  readonly onChange: (text: string) => void;
}

export function SignKey({ text, onChange }: Props) {
  return (
    <button
      type="button"
      class="sign-key"
      aria-label="Change the sign"
      // The caret stays where it is, and the phone's keyboard up.
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => onChange(flipped(text))}
    >
      ±
    </button>
  );
}
