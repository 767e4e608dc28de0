/** First load. A screen that is fetched when it is first asked for: only the list and the visit load at once. */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

export function Lazy({ load }: { readonly load: () => Promise<ComponentType> }) {
  const [Screen, setScreen] = useState<ComponentType | undefined>();
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let wanted = true;
    load().then(
      (screen) => wanted && setScreen(() => screen),
      () => wanted && setFailed(true),
    );
    return () => {
      wanted = false;
    };
  }, [load]);
  if (Screen) return <Screen />;
  if (!failed) return <p class="wait" aria-busy="true" />;
  return (
    <div class="page">
      <p role="alert">This part of the app could not be opened. What you entered is kept.</p>
      <button type="button" class="quiet" onClick={() => location.reload()}>
        Open the app again
      </button>
    </div>
  );
}
