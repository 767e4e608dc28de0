import type { ComponentChildren } from 'preact';

/** The job card itself: the paper that the punched steps are on. Fills what the top bar and the dock leave. */
export function Sheet({ children }: { children: ComponentChildren }) {
  return <main class="sheet">{children}</main>;
}
