/** Where one adjuster stands, under the thumb: touched on its drawing, typed, or gone to a step at a time; in large letters. */
import './standing.css';
import { useState } from 'preact/hooks';
import type { Adjuster, Corner, Position } from '../../../core/contract.ts';
import { AdjusterFace, hasFace } from '../../parts/adjuster-face.tsx';
import { units } from '../../state/preferences.ts';
import { atEnd, positionsOf, positionText, stepped, unsidedWay } from '../../state/standing.ts';
import { TypedPlace } from './typed-place.tsx';

interface Props {
  readonly caption: string;
  readonly corner: Corner;
  readonly adjuster: Adjuster;
  readonly position: Position;
  readonly unknown?: boolean;
  readonly onChange: (position: Position) => void;
  readonly actions: readonly { readonly label: string; readonly onPress: () => void; readonly main?: boolean }[];
}

export function Stepper({ caption, corner, adjuster, position, unknown = false, onChange, actions }: Props) {
  const of = `${corner} ${adjuster.id}`;
  const [typing, type] = useState('');
  const step = (steps: 1 | -1) => onChange(stepped(adjuster, position, steps));
  const taken = unknown ? 'Don’t know' : positionText(adjuster, position);
  const isTyped = typing === of;
  // Of a cam that has no + side on file the drawing says what is at either end.
  const [less, more] = unsidedWay(adjuster) ? ['‹', '›'] : ['−', '+'];
  return (
    <section class="dock stepper" aria-label={caption}>
      <p class="stepper-caption">{caption}</p>
      {hasFace(adjuster.kind) && !isTyped && (
        <AdjusterFace
          {...{ adjuster, corner, position, unknown }}
          positions={positionsOf(adjuster)}
          units={units.value}
          onPick={onChange}
        />
      )}
      {!isLongList(adjuster) && (
        <output class={taken.length > 14 ? 'stepper-value stepper-long' : 'stepper-value'}>{taken}</output>
      )}
      {isTyped && <TypedPlace key={of} {...{ adjuster, position }} onChange={onChange} />}
      <div class="stepper-row">
        <button
          type="button"
          aria-label="One step down"
          disabled={atEnd(adjuster, position, -1)}
          onClick={() => step(-1)}
        >
          {less}
        </button>
        {isLongList(adjuster) ? (
          <PositionList adjuster={adjuster} position={position} unknown={unknown} onChange={onChange} />
        ) : (
          <button type="button" class="stepper-type" aria-pressed={isTyped} onClick={() => type(isTyped ? '' : of)}>
            {isTyped && hasFace(adjuster.kind) ? 'Drawing' : 'Type it'}
          </button>
        )}
        <button type="button" aria-label="One step up" disabled={atEnd(adjuster, position, 1)} onClick={() => step(1)}>
          {more}
        </button>
      </div>
      <div class="stepper-actions">
        {actions.map(({ label, onPress, main }) => (
          <button
            key={label}
            type="button"
            class={main ? 'action-bar-primary' : 'action-bar-secondary'}
            onClick={onPress}
          >
            {label}
          </button>
        ))}
      </div>
    </section>
  );
}

/** Labels that nobody steps through one by one, and that no drawing has: a whole printed chart. */
const isLongList = (adjuster: Adjuster): boolean =>
  typeof adjuster.reference === 'string' && !hasFace(adjuster.kind) && positionsOf(adjuster).length > 12;

function PositionList({
  adjuster,
  position,
  unknown,
  onChange,
}: Pick<Props, 'adjuster' | 'position' | 'unknown' | 'onChange'>) {
  const all = positionsOf(adjuster);
  const between = all.includes(position) ? [] : [position];
  return (
    <select
      class="stepper-list"
      aria-label="Position"
      value={unknown ? '' : String(position)}
      onChange={(event) => onChange(event.currentTarget.value)}
    >
      {unknown && <option value="">Don’t know</option>}
      {[...between, ...all].map((one) => (
        <option key={one} value={String(one)}>
          {positionText(adjuster, one)}
        </option>
      ))}
    </select>
  );
}
