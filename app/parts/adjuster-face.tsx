import { adjusterName } from '../../core/adjuster/names.ts';
import type { Position } from '../../core/contract.ts';
import { adjusterPictures } from './drawings/catalogue.ts';
import { type FaceProps, nearest } from './drawings/faces/face.ts';

/** Whether where it stands is touched on its drawing; else it is typed. */
export const hasFace = (kind: string): boolean => adjusterPictures[kind]?.face !== undefined;

interface Props extends FaceProps {
  /** The position whose mark is nearest to a touch, wherever on the drawing that was. */
  readonly onPick: (position: Position) => void;
}

/** An adjuster as it is looked at on the car: a touch anywhere on it takes the nearest mark. */
export function AdjusterFace({ onPick, ...props }: Props) {
  const face = adjusterPictures[props.adjuster.kind]?.face?.(props.adjuster);
  if (!face) return null;
  const pick = (event: MouseEvent) => {
    const matrix = (event.currentTarget as SVGGraphicsElement).getScreenCTM();
    if (!matrix) return;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const position = nearest(face.marks(props), x, y, props.position);
    if (position !== undefined) onPick(position);
  };
  const says = face.says?.(props);
  return (
    <figure class="face">
      <svg
        class="picture"
        viewBox={`0 0 ${face.width} ${face.height}`}
        width={face.width}
        height={face.height}
        role="img"
      >
        <title>{`${adjusterName(props.adjuster)}: touch where it stands`}</title>
        <face.Drawing {...props} />
        {/* biome-ignore lint/a11y/noStaticElementInteractions: steps and typing are the way of the keyboard. */}
        <rect class="face-pick" width={face.width} height={face.height} onClick={pick} />
      </svg>
      {says && <figcaption class="soft">{says}</figcaption>}
    </figure>
  );
}
