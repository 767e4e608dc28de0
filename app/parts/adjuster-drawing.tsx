import { adjusterPictures } from './drawings/catalogue.ts';
import type { PictureProps, PictureWords } from './drawings/picture.tsx';

export type { ShimCount } from './drawings/picture.tsx';

/**
 * An adjuster drawn as it will be, with the move in large figures: from → to. What the hand does is the move's
 * instruction, which the card prints. A kind that nobody has drawn yet shows its figures alone.
 */
export function AdjusterDrawing(props: PictureProps) {
  const entry = adjusterPictures[props.adjuster.kind];
  const words: PictureWords = entry?.words(props) ?? { from: String(props.from), to: String(props.to), note: '' };
  const layout = entry && !entry.wide ? 'adjuster-drawing adjuster-drawing-beside' : 'adjuster-drawing';
  return (
    <figure class={layout}>
      {/* Keyed by the move, so that the next move turns the cam afresh. */}
      {entry && <entry.Picture key={`${props.adjuster.id} ${props.from} ${props.to}`} {...props} />}
      <figcaption>
        <FromTo {...words} />
        {words.also && <p class="adjuster-drawing-note">{words.also}</p>}
      </figcaption>
    </figure>
  );
}

/** "3 → 5" to be read from two metres. */
export function FromTo({ from, to, unit }: Pick<PictureWords, 'from' | 'to' | 'unit'>) {
  return (
    <p class="from-to">
      {from !== '' && (
        <>
          <span>{from}</span>
          <svg viewBox="0 0 24 20" width="24" height="20" role="img">
            <title>to</title>
            <path d="M2 10h20m-7-7 7 7-7 7" />
          </svg>
        </>
      )}
      <b>{to}</b>
      {unit && <span class="from-to-unit">{unit}</span>}
    </p>
  );
}
