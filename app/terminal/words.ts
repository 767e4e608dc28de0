/**
 * `npm run words`: every sentence that a move's card can say, for every adjuster kind, on both sides, both ways, in mm and in
 * inches, so that a person can read them in one go with the hand in mind that does it.
 */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import type { AdjusterKind } from '../../core/adjuster/kind.ts';
import type { Adjuster, Position } from '../../core/contract.ts';
import { shimStack } from '../../core/units/shim-stack.ts';
import { wordsOf } from '../../core/words/catalogue.ts';

const words = wordsOf();
/** What a wheel might gain by it; an adjuster that speaks in camber says so much. */
const GAINS = { camber: 0.45, caster: 0.1, toe: -0.2 };
const back = ({ camber, caster, toe }: typeof GAINS) => ({ camber: -camber, caster: -caster, toe: -toe });

/** Ways in which a kind is fitted beside the one of its sample. */
const BESIDE: Readonly<Record<string, readonly AdjusterKind['sample'][]>> = {
  'offset-sleeve': (
    [
      ['plain', '1@120'],
      ['0.5@0', '1@90'],
    ] as const
  ).map(([from, to]) => ({ adjuster: { degrees: [0, 0.5, 1], marks: 24, reference: 'plain' }, from, to })),
};

function sayings(kind: AdjusterKind, sample = kind.sample): string[] {
  const { start } = kind;
  const made = { at: 'lowerFront', links: ['a'], ...start, ...sample.adjuster, id: kind.kind, kind: kind.kind };
  const arm = { reference: sample.from, ...made } as Adjuster;
  const say = (
    corner: 'LF' | 'RF',
    from: Position,
    to: Position,
    gains: typeof GAINS,
    { known = false, adjuster = arm, other }: { known?: boolean; adjuster?: Adjuster; other?: typeof GAINS } = {},
  ): string[] => {
    const { sizes = [] } = kind.stack?.(adjuster) ?? {};
    const holds = known ? shimStack(Number(from), sizes).shims : undefined;
    const act = kind.act(adjuster, from, to, { corner, gains, holds, ...(other && { both: [gains, other] }) });
    return (['mm', 'inch'] as const).map((length) => `${corner} ${words.act(act, { length })}`);
  };
  const all = (['LF', 'RF'] as const).flatMap((corner) => [
    ...say(corner, sample.from, sample.to, GAINS),
    ...say(corner, sample.to, sample.from, back(GAINS)),
    // As if both wheels hung on it: their total, and where both point.
    ...say(corner, sample.from, sample.to, GAINS, { other: GAINS }),
    ...say(corner, sample.to, sample.from, back(GAINS), { other: back(GAINS) }),
    ...say(corner, sample.from, sample.to, GAINS, { other: back(GAINS) }),
    ...say(corner, sample.to, sample.from, back(GAINS), { other: GAINS }),
  ]);
  if (kind.stack) {
    // Where it is known what is in the pack.
    const known = { known: true };
    all.push(...say('LF', sample.from, sample.to, GAINS, known), ...say('LF', sample.to, sample.from, GAINS, known));
    all.push(...say('LF', sample.from, 0, GAINS));
  }
  // At the top of a strut there is no bush of an arm.
  all.push(...say('LF', sample.from, sample.to, GAINS, { adjuster: { ...arm, at: 'strutTop' } }));
  // What reads the same in inches, or on the other side, is read once.
  const once = all.filter((one, i) => all.findIndex((other) => other.slice(3) === one.slice(3)) === i);
  const step = `   one step: ${words.step(kind.step(arm).said)}; it stands at ${words.place(kind.place(arm, sample.to))}`;
  const beside = sample === kind.sample ? (BESIDE[kind.kind] ?? []) : [];
  return [
    ...(sample === kind.sample ? [kind.name.toUpperCase()] : []),
    ...once.map((line) => `   ${line}`),
    step,
    ...beside.flatMap((other) => sayings(kind, other)),
    ...(sample === kind.sample ? [''] : []),
  ];
}

/** What is said once for several moves that are one job, of each kind that makes such. */
function jobs({ kind, name, job, wholeAxle, start, sample, act }: AdjusterKind): string[] {
  if (!job && !wholeAxle) return [];
  const made = { at: 'a', links: ['a'], ...start, ...sample.adjuster, id: kind, kind };
  const adjuster = { reference: sample.from, ...made } as Adjuster;
  const way = (from: Position, to: Position) => act(adjuster, from, to, { corner: 'LF' });
  const [there, back] = [way(sample.from, sample.to), way(sample.to, sample.from)];
  const ends = job === 'arm' ? (['front', 'rear'] as const) : (['left', 'right'] as const);
  const pairs = wholeAxle
    ? [
        [there, there],
        [back, back],
      ]
    : [
        [there, back],
        [there, there],
      ];
  const said = pairs.flatMap(([first, second]) =>
    (['mm', 'inch'] as const).map((length) =>
      words.job(
        [
          { end: ends[0], act: first! },
          { end: ends[1], act: second! },
        ],
        job === 'arm' ? 'upper arm' : undefined,
        { length },
      ),
    ),
  );
  return [`${name.toUpperCase()}, SEVERAL AS ONE JOB`, ...new Set(said.map((line) => `   ${line}`)), ''];
}

const kinds = Object.values(adjusterKinds);
console.log([...kinds.flatMap((kind) => sayings(kind)), ...kinds.flatMap(jobs)].join('\n'));
