import type { Corner } from '../../../core/contract.ts';
import { axisFromSweep, type SweptAxis, USUAL_SAI } from '../../../core/measure/sweep.ts';
import { figure, wheelAngle } from '../../../core/units/shop.ts';
import { SweepDrawing } from '../../parts/drawings/bench/sweep.tsx';
import type { Handed } from '../../state/bench.ts';
import { type Ask, type At, behind, type Line, pickCorner, type Tool } from './tool.ts';

const STEERED = ['LF', 'RF'] as const satisfies readonly Corner[];

/** A known SAI is the maker's or a gauge's: nobody types it closer. Trade practice, no source. */
const KNOWN_SAI_SD = 0.5;

function swept(at: At, corner: Corner): SweptAxis | undefined {
  const of = (end: 'first' | 'second') => {
    const prefix = `${corner}.${end}.`;
    const read = at.all('angle', prefix, ['turned', 'camber']);
    const roll = at.angle(`${prefix}roll`);
    return read && { ...read, ...(roll !== undefined && { roll }) };
  };
  const [out, back] = [of('first'), of('second')];
  const sai = at.angle(`${corner}.sai`);
  if (!out || !back) return undefined;
  const { level, plate } = at.scatter;
  return behind(`${corner}.`, () =>
    axisFromSweep(
      out,
      { ...back, turned: -back.turned },
      { camber: level, turned: plate, roll: level },
      sai === undefined ? USUAL_SAI : { value: sai, sd: KNOWN_SAI_SD },
    ),
  );
}

function linesOf(at: At, corner: Corner, { caster, sai, workshop }: SweptAxis): Line[] {
  const { factor, caster: byHand, error } = workshop;
  const by = `${wheelAngle(Math.abs(error), at.units)} ${error < 0 ? 'low' : 'high'}`;
  return [
    at.angleLine(`${corner} caster`, caster, 'large'),
    ...(sai ? [at.angleLine(`${corner} SAI`, sai, 'large')] : []),
    {
      label: `${corner} by the workshop’s factor, camber difference × ${figure(factor, at.units, 2)}`,
      text: `${wheelAngle(byHand, at.units)}, ${by}`,
    },
  ];
}

const ROLL = { is: 'angle', signed: true, optional: true } as const;

export const sweep: Tool = {
  id: 'sweep',
  title: 'Steering sweep',
  Drawing: SweepDrawing,
  before: [
    'Turn plates free, pins out, both at 0 straight ahead',
    'Brake held with a prop on the pedal all the while',
    'Rack or floor level, tyres and pressures alike, car settled',
    'Run-out of the rim compensated',
  ],
  steps: (at) => {
    const corner = at.choice('corner', STEERED);
    const end = (name: 'first' | 'second'): readonly (readonly Ask[])[] => [
      [
        { id: `${corner}.${name}.turned`, label: 'Turned by, degrees', is: 'angle' },
        { id: `${corner}.${name}.camber`, label: 'Camber there', is: 'angle', signed: true },
      ],
      [{ id: `${corner}.${name}.roll`, label: 'Roll there, for SAI only; + front rises', ...ROLL }],
    ];
    return [
      { says: 'Which wheel', pick: pickCorner(STEERED) },
      {
        says: 'Straight ahead: plates at 0, brake propped',
        part: (
          <p class="soft">
            Camber gauge on the hub. For SAI a level across the rim too, at 0 now: from here on it turns with the wheel.
          </p>
        ),
      },
      { says: `Turn the ${corner} wheel out to A, about 20°`, asks: end('first') },
      { says: 'Turn it in, past straight ahead, to B, about 20°', asks: end('second') },
      {
        says: 'SAI, if it is known and no roll was read',
        optional: true,
        asks: [[{ id: `${corner}.sai`, label: 'SAI', is: 'angle', signed: true }]],
      },
    ];
  },
  work: (at) => {
    const found = STEERED.flatMap((corner) => {
      const axis = swept(at, corner);
      return axis ? [{ corner, axis }] : [];
    });
    if (found.length === 0) return undefined;
    return {
      lines: found.flatMap(({ corner, axis }) => linesOf(at, corner, axis)),
      says: ['The two angles need not be alike. The exact rule counts the wheel’s own camber and SAI in.'],
      hands: found.flatMap(({ corner, axis: { caster, sai } }): Handed[] => [
        { where: corner, angle: 'caster', by: 'sweep', ...caster },
        ...(sai ? [{ where: corner, angle: 'sai', by: 'sweep', ...sai } as const] : []),
      ]),
    };
  },
};
