/** The cell that is typed into stays in sight between the head and the keypad. */

/** px between the cell and what stands over the paper. */
const AIR = 6;

/** @param least no further than it takes, so that what stands above the first cell stays in sight with it */
export function cellInSight({ least = false } = {}): void {
  const box = (of: string) => document.querySelector(of)?.getBoundingClientRect();
  const cell = box('.reading-grid-active');
  const dock = document.querySelector('.dock');
  // A keypad that goes with the page would be scrolled away from under the thumb.
  if (!cell || (dock && getComputedStyle(dock).position === 'static')) return;
  const keypad = dock?.getBoundingClientRect();
  const beneath = keypad && keypad.left < cell.right ? keypad.top : innerHeight;
  const head = box('.top-bar')?.bottom ?? 0;
  const by = least ? Math.max(0, cell.bottom + AIR - beneath) : (cell.top + cell.bottom - head - beneath) / 2;
  scrollBy(0, by);
}
