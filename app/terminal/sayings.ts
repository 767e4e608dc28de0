/** Every sentence that a move's card can say, for every adjuster kind, on both sides, both ways, in the units that are asked for. */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import type { AdjusterKind } from '../../core/adjuster/kind.ts';
import type { Adjuster, Position } from '../../core/contract.ts';
import type { LiveSaid } from '../../core/said.ts';
import { shimStack } from '../../core/units/shim-stack.ts';
import { wheelAngle } from '../../core/units/shop.ts';
import { wordsOf } from '../../core/words/catalogue.ts';
import type { Units } from '../../core/words/words.ts';

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

function sayings(kind: AdjusterKind, shops: readonly Units[], sample = kind.sample): string[] {
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
    return shops.map((units) => `${corner} ${words.act(act, units)}`);
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
  const steps = shops.map(
    (units) =>
      `   one step: ${words.step(kind.step(arm).said, units)}; it stands at ${words.place(kind.place(arm, sample.to), units)}`,
  );
  const beside = sample === kind.sample ? (BESIDE[kind.kind] ?? []) : [];
  return [
    ...(sample === kind.sample ? [kind.name.toUpperCase()] : []),
    ...once.map((line) => `   ${line}`),
    ...new Set(steps),
    ...beside.flatMap((other) => sayings(kind, shops, other)),
    ...(sample === kind.sample ? [''] : []),
  ];
}

/** What is said once for several moves that are one job, of each kind that makes such. */
function jobs({ kind, name, job, wholeAxle, start, sample, act }: AdjusterKind, shops: readonly Units[]): string[] {
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
    shops.map((units) =>
      words.job(
        [
          { end: ends[0], act: first! },
          { end: ends[1], act: second! },
        ],
        job === 'arm' ? 'upper arm' : undefined,
        units,
      ),
    ),
  );
  return [`${name.toUpperCase()}, SEVERAL AS ONE JOB`, ...new Set(said.map((line) => `   ${line}`)), ''];
}

/** What is said where a move goes by the rack, of each kind that can be watched. */
function watched({ kind, name, live, start, sample, act }: AdjusterKind, shops: readonly Units[]): string[] {
  if (!live) return [];
  const say = (own: object, corner: 'LF' | 'RF', from: Position, to: Position, gains: typeof GAINS, both = false) => {
    const made = { at: 'lowerFront', links: ['a'], ...start, ...sample.adjuster, ...own, id: kind, kind };
    const one = act({ reference: sample.from, ...made } as Adjuster, from, to, {
      ...{ corner, gains },
      ...(both && { both: [gains, gains] }),
    });
    return shops.flatMap((units) =>
      (['camber', 'toe'] as const).map((angle) => {
        const figure = wheelAngle(angle === 'toe' ? 0.12 : -1.42, units);
        return words.setBy(one, { angle, figure, rises: gains[angle] > 0 }, units);
      }),
    );
  };
  const own = [{}, { turns: 'clockwise' }, { longerWhen: 'clockwise', seenFrom: 'the wheel end' }, { at: 'strutTop' }];
  const lines = own.flatMap((one) => [
    ...say(one, 'LF', sample.from, sample.to, GAINS),
    ...say(one, 'RF', sample.to, sample.from, back(GAINS)),
    ...say(one, 'LF', sample.from, sample.to, GAINS, true),
  ]);
  return [`${name.toUpperCase()}, BY THE RACK`, ...new Set(lines.map((line) => `   ${line}`)), ''];
}

/** What stands on the card of such a move. */
function onItsCard(units: Units): string[] {
  const shown = (degrees: number) => wheelAngle(degrees, units);
  const figure = shown(-1.42);
  const acts = Object.values(adjusterKinds).flatMap(({ kind, live, start, sample, act }) => {
    if (!live) return [];
    const made = { at: 'lowerFront', links: ['a'], ...start, ...sample.adjuster, id: kind, kind };
    return [act({ reference: sample.from, ...made } as Adjuster, sample.from, sample.to, { corner: 'LF' })];
  });
  const said: LiveSaid[] = [
    ...acts.map((one) => ({ live: 'until', act: one }) as const),
    { live: 'then', angle: 'camber' },
    { live: 'sweep', figure: shown(5.02) },
    { live: 'apart', angle: 'camber', read: shown(-0.7), figure, within: shown(0.09) },
    { live: 'way', angle: 'camber', figure },
    { live: 'made', angle: 'camber', figure },
    { live: 'made', angle: 'camber', figure, stands: '0 → +2' },
    { live: 'which' },
  ];
  return ['ON THE CARD OF A MOVE BY THE RACK', ...new Set(said.map((one) => `   ${words.live(one)}`)), ''];
}

/** Line by line, kind by kind. */
export function sayingsOf(shops: readonly Units[]): string[] {
  const kinds = Object.values(adjusterKinds);
  return [
    ...kinds.flatMap((kind) => sayings(kind, shops)),
    ...kinds.flatMap((kind) => jobs(kind, shops)),
    ...kinds.flatMap((kind) => watched(kind, shops)),
    ...new Set(shops.flatMap(onItsCard)),
  ];
}
