/** First load. A part that is fetched when it is first asked for: only the list loads at once. */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

interface Props<P> {
  /** Has to be the same function at every drawing. */
  readonly load: () => Promise<ComponentType<P>>;
  readonly props: P;
  /** Shown while it is fetched; a part that cannot be fetched stays so if it is `quiet`. */
  readonly waiting?: string;
  readonly quiet?: boolean;
}

export function Lazy<P extends object>({ load, props, waiting, quiet = false }: Props<P>) {
  const [Part, setPart] = useState<ComponentType<P> | undefined>();
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let wanted = true;
    load().then(
      (part) => wanted && setPart(() => part),
      () => wanted && setFailed(true),
    );
    return () => {
      wanted = false;
    };
  }, [load]);
  if (Part) return <Part {...props} />;
  if (quiet) return <>{waiting}</>;
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
