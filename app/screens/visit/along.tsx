/** The visit as it goes on in another window: to be looked at, or taken over. */
import type { ComponentChildren } from 'preact';
import { alongside, takeOver } from '../../state/one-window.ts';

export function OneWindow({ children }: { readonly children: ComponentChildren }) {
  if (!alongside.value) return <>{children}</>;
  return (
    <>
      <div class="along" inert>
        {children}
      </div>
      <div class="dock action-bar">
        <p role="status">This visit is open in another window. Here it is only shown, and follows.</p>
        <button type="button" class="action-bar-primary" onClick={takeOver}>
          Go on here
        </button>
      </div>
    </>
  );
}
