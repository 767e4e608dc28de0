/** One adjuster's position under the thumb: a step down, a step up, the position between in large letters. */
import type { Adjuster, Position } from '../../../core/contract.ts';
import { atEnd, positionsOf, positionText, stepped } from '../../state/standing.ts';

interface Props {
  readonly caption: string;
  readonly adjuster: Adjuster;
  readonly position: Position;
  readonly unknown?: boolean;
  readonly onChange: (position: Position) => void;
  readonly actions: readonly { readonly label: string; readonly onPress: () => void; readonly main?: boolean }[];
}

export function Stepper({ caption, adjuster, position, unknown = false, onChange, actions }: Props) {
  const step = (steps: 1 | -1) => onChange(stepped(adjuster, position, steps));
  return (
    <section class="dock stepper" aria-label={caption}>
      <p class="stepper-caption">{caption}</p>
      <div class="stepper-row">
        <button
          type="button"
          aria-label="One step down"
          disabled={atEnd(adjuster, position, -1)}
          onClick={() => step(-1)}
        >
          −
        </button>
        {isLongList(adjuster) ? (
          <PositionList adjuster={adjuster} position={position} unknown={unknown} onChange={onChange} />
        ) : (
          <output class="stepper-value">{unknown ? 'Don’t know' : positionText(adjuster, position)}</output>
        )}
        <button type="button" aria-label="One step up" disabled={atEnd(adjuster, position, 1)} onClick={() => step(1)}>
          +
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

/** Labels that nobody steps through one by one: tapers at every angle, a whole printed chart. */
const isLongList = (adjuster: Adjuster): boolean =>
  typeof adjuster.reference === 'string' && positionsOf(adjuster).length > 12;

function PositionList({ adjuster, position, unknown, onChange }: Omit<Props, 'caption' | 'actions'>) {
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
