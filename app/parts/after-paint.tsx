import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** Whether the first frame is painted: what lies under the glass is drawn after it, so that the touch is answered soon. */
export function useAfterPaint(): boolean {
  const [painted, setPainted] = useState(false);
  useEffect(() => setPainted(true), []);
  return painted;
}

/** What lies under the glass, drawn at once and each time anew only after the frame that answers a touch. */
export function AfterPaint({ children }: { readonly children: ComponentChildren }) {
  const [drawn, setDrawn] = useState(children);
  useEffect(() => setDrawn(children), [children]);
  // The same as before is not gone through again.
  return <>{drawn}</>;
}
