/** The target of every move that goes by the rack, drawn alike: the needle from where it is, into the bracket. */
interface Props {
  /** What the rack shows before it is turned, and what it is turned to. */
  readonly from: number;
  readonly value: number;
  readonly format: (value: number) => string;
}

const [MIDDLE, AXIS, AWAY] = [160, 46, 112];
const TICKS = Array.from({ length: 15 }, (_, i) => 20 + i * 20);

export function Needle({ from, value, format }: Props) {
  const side = from < value ? -1 : 1;
  const start = MIDDLE + side * AWAY;
  return (
    <svg class="needle" viewBox="0 0 320 74" width="320" height="74" role="img">
      <title>
        The figure goes {side < 0 ? 'up' : 'down'}, from about {format(from)} to {format(value)}
      </title>
      <path class="picture-line" d={`M8 ${AXIS}H312`} />
      {TICKS.map((x) => (
        <path key={x} class="picture-line" d={`M${x} ${AXIS}v5`} />
      ))}
      <path class="needle-bracket" d={`M${MIDDLE - 12} 12h-8V${AXIS + 8}h8M${MIDDLE + 12} 12h8V${AXIS + 8}h-8`} />
      <path class="needle-way" d={`M${start - side * 16} 28H${MIDDLE + side * 40}`} />
      <path class="needle-tip" d={`M${MIDDLE + side * 34} 28l${side * 9}-6v12z`} />
      <path class="needle-was" d={`M${start} ${AXIS}l-8-26h16z`} />
      <path class="needle-is" d={`M${MIDDLE} ${AXIS}l-8-26h16z`} style={{ '--needle-from': `${side * AWAY}px` }} />
      <text class="picture-small" x={start} y="70" text-anchor="middle">
        now {format(from)}
      </text>
    </svg>
  );
}
