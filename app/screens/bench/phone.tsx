import { useEffect, useRef, useState } from 'preact/hooks';
import { CORNERS, type Corner } from '../../../core/contract.ts';
import { InputError } from '../../../core/input-error.ts';
import { leanOf, type Orientation } from '../../../core/measure/phone.ts';
import { settled, type TurnedRound, turnedRound } from '../../../core/measure/turned-round.ts';
import { partAngle, wheelAngle } from '../../../core/units/shop.ts';
import { PhoneDrawing } from '../../parts/drawings/bench/phone.tsx';
import type { Handed } from '../../state/bench.ts';
import { words } from '../../state/words.ts';
import { orientation, type SensorState, sensorState, startSensor, stopSensor } from './sensor.ts';
import { type At, pickCorner, type Tool, WHEELS } from './tool.ts';

/** Readings that are taken each way, and ms between them. */
const [COUNT, BETWEEN] = [30, 50];
/** Degrees to which they are kept. */
const DIGITS = 2;
/** ms to turn it round in: its screen is not seen then. */
const TO_TURN = 4_000;

const readings = (at: At, corner: Corner, way: 'first' | 'second'): number[] =>
  (at.texts[`${corner}.${way}`] ?? '').split(' ').filter(Boolean).map(Number);

function leanAt(at: At, corner: Corner): TurnedRound | undefined {
  const [first, second] = [readings(at, corner, 'first'), readings(at, corner, 'second')];
  return first.length > 0 && second.length > 0 ? turnedRound(first, second) : undefined;
}

export const phone: Tool = {
  id: 'phone',
  title: 'Camber with this phone',
  Drawing: PhoneDrawing,
  before: [
    'Out of its case, its back flat on a straight edge across the rim, upright',
    'Wheels straight ahead, car settled on a level floor',
    'Run-out of the rim compensated, tyres and pressures alike',
  ],
  caution: 'A phone is a rough gauge: what it shows is as good as its ±.',
  steps: (at) => {
    const corner = at.choice('corner', WHEELS);
    return [
      { says: 'Which wheel', pick: pickCorner() },
      {
        says: 'A: upright, its back to the wheel',
        isDone: readings(at, corner, 'first').length > 0,
        part: <Take key={`${corner} A`} at={at} corner={corner} way="first" name="A" />,
      },
      {
        says: 'B: turned round by half a turn, its screen to the wheel',
        isDone: readings(at, corner, 'second').length > 0,
        part: <Take key={`${corner} B`} at={at} corner={corner} way="second" name="B" />,
      },
    ];
  },
  work: (at) => {
    const found = CORNERS.flatMap((corner) => {
      const one = leanAt(at, corner);
      return one ? [{ corner, one }] : [];
    });
    if (found.length === 0) return undefined;
    return {
      lines: found.flatMap(({ corner, one }) => [
        at.angleLine(`${corner} camber`, one.angle, 'large'),
        {
          label: `${corner}: its zero, and the scatter of one reading`,
          text: `${wheelAngle(one.zero, at.units)}, ${partAngle(Number(one.scatter.toFixed(3)), at.units)}`,
        },
      ]),
      hands: found.map(({ corner, one }): Handed => ({ where: corner, angle: 'camber', by: 'phone', ...one.angle })),
    };
  },
};

const WHY: Readonly<Partial<Record<SensorState, string>>> = {
  none: 'This phone has no inclinometer that the browser can read. Use a level or a plumb line.',
  refused: 'The phone did not allow its sensor to be read: allow it in the browser’s settings of this page.',
};

interface TakeProps {
  readonly at: At;
  readonly corner: Corner;
  readonly way: 'first' | 'second';
  readonly name: string;
}

/** The reading as it is now, and the button that takes it; the other way round it waits until it is turned. */
function Take({ at, corner, way, name }: TakeProps) {
  const [taking, setTaking] = useState<readonly number[] | undefined>();
  const [wrong, setWrong] = useState('');
  const [turning, setTurning] = useState(false);
  const before = useRef<Orientation | undefined>(undefined);
  useEffect(() => stopSensor, []);
  useEffect(() => {
    if (!turning) return;
    const timer = setTimeout(() => {
      setTurning(false);
      setTaking([]);
    }, TO_TURN);
    return () => clearTimeout(timer);
  }, [turning]);
  const now = orientation.value;
  // By the clock: a phone that lies still may say nothing until it is moved.
  useEffect(() => {
    if (!taking) return;
    const timer = setTimeout(() => takeOne(taking), BETWEEN);
    return () => clearTimeout(timer);
  }, [taking]);
  const takeOne = (taking: readonly number[]) => {
    const now = orientation.peek();
    if (!now || now === before.current) {
      setTaking(undefined);
      setWrong('The sensor says nothing: nothing was taken. Move the phone a little, and take it again.');
      return;
    }
    const next = [...taking, Number(leanOf(now).toFixed(DIGITS))];
    if (next.length < COUNT) {
      setTaking(next);
      return;
    }
    setTaking(undefined);
    // Felt where the screen is not seen.
    navigator.vibrate?.(200);
    try {
      settled(way, next);
      at.put({ [`${corner}.${way}`]: next.join(' ') });
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      setWrong(words.refusal({ value: error.value, rule: error.rule }, undefined, at.units));
    }
  };
  const state = sensorState.value;
  const taken = readings(at, corner, way);
  const mean = taken.length > 0 ? taken.reduce((sum, x) => sum + x, 0) / taken.length : undefined;
  const begin = () => {
    setWrong('');
    if (way === 'first') setTaking([]);
    else {
      // Turned round it shows something else, or it is dead.
      before.current = orientation.peek();
      setTurning(true);
    }
  };
  return (
    <>
      {WHY[state] && (
        <p class="wrong" role="alert">
          {WHY[state]}
        </p>
      )}
      {state === 'on' && now && (
        <p class="bench-live">
          <output>{wheelAngle(leanOf(now), at.units)}</output>
        </p>
      )}
      {mean !== undefined && <p>{`${name} taken: ${wheelAngle(mean, at.units)}, ${taken.length} readings`}</p>}
      {wrong && (
        <p class="wrong" role="alert">
          {wrong}
        </p>
      )}
      {state === 'on' ? (
        <button type="button" class="quiet wide" onClick={begin} disabled={turning || taking !== undefined}>
          {turning
            ? 'Turn it round and hold it there'
            : taking
              ? `Hold it still: ${taking.length} of ${COUNT}`
              : `Take ${name}`}
        </button>
      ) : (
        <button type="button" class="quiet wide" onClick={() => void startSensor()} disabled={state === 'waiting'}>
          {state === 'waiting' ? 'Waiting for the sensor' : 'Use the sensor'}
        </button>
      )}
    </>
  );
}
