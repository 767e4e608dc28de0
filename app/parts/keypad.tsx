import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

type Digit = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9';
export type KeypadKey = Digit | '.' | '±' | '⌫' | 'next' | 'skip' | 'dm';

/** A key that was touched or typed, and when: ms, as events count them. */
export type OnKey = (key: KeypadKey, at: number, by: 'touch' | 'keyboard') => void;

export interface KeypadProps {
  onKey: OnKey;
  /** What was taken just now, while another field is up. */
  echo?: ComponentChildren;
  /** Which field is being typed: "RF camber". */
  caption: ComponentChildren;
  /** What is typed there, for where the form itself is out of sight. */
  value?: string;
  /** What is allowed or wanted there: "window −1.00 to −0.20". */
  hint?: ComponentChildren;
  /** The sign on the decimal key; the key itself is always `'.'`. */
  decimal?: '.' | ',';
  /** In degrees-minutes the decimal key shows ° and the `dm` key offers the way back. */
  mode?: 'degrees' | 'degrees-minutes';
  /** The decimal key shows the bar of a fraction. */
  fraction?: boolean;
  nextLabel?: string;
}

interface Key {
  key: KeypadKey;
  face: ComponentChildren;
  /** What a screen reader says where the face is not a word. */
  says?: string;
  kind?: 'word' | 'next';
}

const digit = (key: Digit): Key => ({ key, face: key });

const rubOut: Key = {
  key: '⌫',
  says: 'rub out',
  face: (
    <svg viewBox="0 0 28 20" width="28" height="20" aria-hidden="true">
      <path d="M9 2h16a1.5 1.5 0 0 1 1.5 1.5v13A1.5 1.5 0 0 1 25 18H9l-7.5-8zM13 6.5l7 7m0-7-7 7" />
    </svg>
  ),
};

/** The four rows of the pad, as they lie under the thumb. */
function layout(decimal: '.' | ',', minutes: boolean, fraction: boolean, nextLabel: string): Key[] {
  const point: Key = fraction
    ? { key: '.', face: '/', says: 'bar of a fraction' }
    : minutes
      ? { key: '.', face: '°', says: 'degrees, then minutes' }
      : { key: '.', face: decimal, says: 'decimal point' };
  const unit: Key = minutes
    ? { key: 'dm', face: `0${decimal}00`, says: 'type decimal degrees', kind: 'word' }
    : { key: 'dm', face: '0° 00′', says: 'type degrees and minutes', kind: 'word' };
  const sign: Key = { key: '±', face: '±', says: 'change sign' };
  const skip: Key = { key: 'skip', face: 'Skip', kind: 'word' };
  const next: Key = { key: 'next', face: nextLabel, kind: 'next' };
  const rows = [
    [digit('7'), digit('8'), digit('9'), sign],
    [digit('4'), digit('5'), digit('6'), rubOut],
    [digit('1'), digit('2'), digit('3'), unit],
    [point, digit('0'), skip, next],
  ];
  return rows.flat();
}

/** A key of a real keyboard, as the pad would say it; undefined where the pad has none. */
export function keyOf(typed: string): KeypadKey | undefined {
  if (/^[0-9]$/.test(typed)) return typed as Digit;
  if (typed === '.' || typed === ',' || typed === '°' || typed === '/') return '.';
  if (typed === '-' || typed === '−' || typed === '+') return '±';
  if (typed === 'Backspace') return '⌫';
  return typed === 'Enter' ? 'next' : undefined;
}

/**
 * When a key was touched: when the finger came down. A click says so in Chromium; elsewhere it may have the time at which
 * the page came to it, and on a busy phone that is much later.
 */
function useTouchTimes() {
  const downs = useRef(new Map<KeypadKey, number>()).current;
  return (key: KeypadKey, press: (at: number) => void) => ({
    onPointerDown: (event: PointerEvent) => downs.set(key, event.timeStamp),
    onPointerCancel: () => downs.delete(key),
    onClick: (event: MouseEvent) => {
      press(Math.min(event.timeStamp, downs.get(key) ?? event.timeStamp));
      downs.delete(key);
    },
  });
}

/** The app's own number pad: wide keys for gloves, ± and degrees-minutes, and the words for where one is. */
export function Keypad(props: KeypadProps) {
  const {
    onKey,
    echo,
    caption,
    value,
    hint,
    decimal = '.',
    mode = 'degrees',
    fraction = false,
    nextLabel = 'Next',
  } = props;
  const timed = useTouchTimes();
  const latest = useRef(onKey);
  latest.current = onKey;
  useLayoutEffect(() => {
    const onType = (event: KeyboardEvent) => {
      const key = keyOf(event.key);
      const onControl =
        event.target instanceof HTMLElement && event.target.closest('input, textarea, select, a, button');
      if (!key || event.ctrlKey || event.metaKey || event.altKey) return;
      if (onControl && (key === 'next' || !onControl.matches('button'))) return;
      event.preventDefault();
      latest.current(key, event.timeStamp, 'keyboard');
    };
    document.addEventListener('keydown', onType);
    return () => document.removeEventListener('keydown', onType);
  }, []);
  return (
    <section class="dock keypad" aria-label="Keypad">
      {/* There before it has anything to say: a reader of the screen tells what comes into it. */}
      <p class="keypad-echo" role="status">
        {echo}
      </p>
      <p class="keypad-line">
        <span>
          {caption} {value && <strong class="keypad-value">{value}</strong>}
        </span>
        <span>{hint}</span>
      </p>
      <div class="keypad-keys">
        {layout(decimal, mode === 'degrees-minutes', fraction, nextLabel).map(({ key, face, says, kind }) => (
          <button
            key={key}
            type="button"
            class={`keypad-key ${kind ? `keypad-${kind}` : ''}`}
            aria-label={says}
            {...timed(key, (at) => onKey(key, at, 'touch'))}
          >
            {face}
          </button>
        ))}
      </div>
    </section>
  );
}
