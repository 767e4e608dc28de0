import type { SuspensionPicture } from './suspension-picture.ts';

const ROWS = [0, 1, 2, 3, 4];
const NAME = 'No geometry, the chart only';

/** A printed sheet: positions down, angles across. */
function Sheet() {
  return (
    <svg class="picture" viewBox="0 0 320 168" width="100%" role="img">
      <title>{NAME}</title>
      <path class="picture-body" d="M72 4h152l24 24v136H72z" />
      <path class="picture-bolt" d="M224 4v24h24" />
      <path class="picture-line" d="M88 24h84M88 46h144v102H88zM124 46v102" />
      {ROWS.map((row) => (
        <g key={row}>
          {row > 0 && <path class="picture-line" d={`M88 ${46 + row * 20.4}h144`} />}
          <path
            class="picture-line"
            d={`M98 ${57 + row * 20.4}h16M136 ${57 + row * 20.4}h24M172 ${57 + row * 20.4}h18M202 ${57 + row * 20.4}h22`}
          />
        </g>
      ))}
    </svg>
  );
}

export const unknown: SuspensionPicture = { name: NAME, points: {}, links: [], upright: [], Sheet };
