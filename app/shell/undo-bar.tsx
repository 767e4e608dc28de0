/** First load. What was just done, and the touch that undoes it; gone with the screen. */
import { useEffect } from 'preact/hooks';
import { hashOf, route } from '../routes.ts';
import { undoOffer } from '../state/undo-offer.ts';

export function UndoBar() {
  const here = hashOf(route.value);
  const end = () => {
    if (undoOffer.value?.on === here) undoOffer.value = undefined;
  };
  useEffect(() => end, [here]);
  const offer = undoOffer.value;
  if (offer?.on !== here) return null;
  return (
    <div class="undo-bar" role="status">
      <span>{offer.says}.</span>
      <button
        type="button"
        class="quiet"
        onClick={() => {
          end();
          offer.undo();
        }}
      >
        Undo
      </button>
    </div>
  );
}
