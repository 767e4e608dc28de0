/**
 * A nervous thumb, or a gloved one, touches twice. The second touch is meant for what the first one was for: where a move was
 * answered and something else has come under the thumb since, it is let go, or the next move would be booked, or left, before
 * anybody has read it.
 */

/** ms within which a touch in the same place is the same one's second; by the hand's own time, however slow the page is. */
const SECOND = 350;
const TOUCHABLE = 'button, a, input, select, textarea, label, summary';
/** What holds answers that are written down at once. */
const ANSWERS = '.card-foot';

interface Touch {
  readonly what: Element;
  /** Where that was as it was touched. */
  readonly box: DOMRect;
  /** When the finger came down, ms. */
  readonly at: number;
}

export function heedSecondTouches(): void {
  let down = 0;
  let first: Touch | undefined;
  addEventListener('pointerdown', ({ timeStamp }) => (down = timeStamp), true);
  // A hand that types in between has gone on: its next touch is no second one.
  addEventListener('keydown', () => (first = undefined), true);
  addEventListener(
    'click',
    (event) => {
      // What is clicked by a key, or by the page itself, has no place.
      if (event.detail === 0) return;
      const what = (event.target as Element).closest(TOUCHABLE);
      if (first && isSecond(first, event, what, down)) {
        event.preventDefault();
        event.stopImmediatePropagation();
      } else first = what?.closest(ANSWERS) ? { what, box: what.getBoundingClientRect(), at: down } : undefined;
    },
    true,
  );
}

/** Of one and the same touch come two clicks at a label: its own and its field's. */
const isSecond = (first: Touch, { clientX, clientY }: MouseEvent, what: Element | null, at: number): boolean =>
  what !== first.what &&
  at > first.at &&
  at < first.at + SECOND &&
  clientX >= first.box.left &&
  clientX <= first.box.right &&
  clientY >= first.box.top &&
  clientY <= first.box.bottom;
