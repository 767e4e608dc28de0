/** Words are made of data at the door, in the language that is asked for; kernels know none. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Adjuster, Plan } from '../../../core/contract.ts';
import { adjusterKinds, adjusterPositions, planMoves, planOfFile, planRequest } from '../../../core/index.ts';
import { MOVE_PREFERENCES, NOT_AGAIN, PAIR_PREFERENCES } from '../../../core/plan/preferences.ts';
import type { Act, Hint, Level, Note, Remedy, Suspect } from '../../../core/said.ts';
import { languages, wordsOf } from '../../../core/words/catalogue.ts';
import type { Words } from '../../../core/words/words.ts';
import { oneOf, randomSuspension, stream } from '../../tools/random-cars.ts';
import { FITTING, sampleAdjuster } from '../../tools/samples.ts';
import { carFile } from '../records/fixture.ts';

/** A sentence that somebody can read aloud: figures that are figures, a true minus, a full stop at its end. */
function expectSentence(text: string): void {
  expect(text).toMatch(/^[\p{Lu}\p{L}\d][^\n]*\.$/u);
  expect(text).not.toMatch(/undefined|NaN|null|\[object|Infinity|e-\d| {2}|\s-\d/);
}

describe.each(Object.keys(languages))('the words of %s', (language) => {
  const words = wordsOf(language);

  it.each(Object.keys(adjusterKinds))('say every move of a %s, its steps and its places', (name) => {
    const kind = adjusterKinds[name]!;
    const random = stream(11);
    const { suspension } = FITTING.find(({ adjuster }) => adjuster === name)!;
    for (let i = 0; i < 8; i++) {
      const one = sampleAdjuster(random, name, randomSuspension(random, suspension));
      const all = adjusterPositions(one);
      const [from, to] = [oneOf(random, all), oneOf(random, all)];
      if (from !== to)
        expectSentence(words.act(kind.act(one, from, to, { corner: oneOf(random, ['LF', 'RR'] as const) })));
      for (const text of [words.place(kind.place(one, from)), words.step(kind.step(one).said)]) {
        expect(text).not.toMatch(/undefined|NaN|\[object|^$/);
      }
    }
  });

  it('say several moves of every kind as one job, of two acts too', () => {
    const acts = Object.values(adjusterKinds).map((kind): Act => {
      const { adjuster, from, to } = kind.sample;
      const one = { at: 'a', links: ['a'], direction: [0, 1, 0], ...kind.start, ...adjuster, id: 'a', kind: kind.kind };
      return kind.act({ reference: from, ...one } as Adjuster, from, to, { corner: 'LF' });
    });
    for (const [i, act] of acts.entries()) {
      for (const other of [act, acts[(i + 1) % acts.length]!]) {
        for (const length of ['mm', 'inch'] as const) {
          const said = words.job(
            [
              { end: 'left', act },
              { end: 'right', act: other },
            ],
            undefined,
            { length },
          );
          expectSentence(said);
          // Either both ends are named, or it is said of both at once.
          expect(said).toMatch(/left.*right|both sides/is);
        }
      }
    }
  });

  it('say every move that the rack can lead, as a hand begins it and until when', () => {
    for (const kind of Object.values(adjusterKinds).filter(({ live }) => live)) {
      const { adjuster, from, to } = kind.sample;
      const one = { at: 'a', links: ['a'], direction: [0, 1, 0], ...kind.start, ...adjuster, id: 'a', kind: kind.kind };
      for (const [a, b] of [
        [from, to],
        [to, from],
      ] as const) {
        const act = kind.act({ reference: from, ...one } as Adjuster, a, b, { corner: 'LF' });
        for (const units of [{}, { length: 'inch', angle: 'degrees-minutes', decimal: ',' }] as const) {
          const said = words.setBy(act, { angle: 'camber', figure: '−1,42°', rises: true }, units);
          expectSentence(said);
          expect(said).toContain('−1,42° camber');
          if (units.length) expect(said).not.toMatch(/\d\.\d| mm\b/);
          expect(words.live({ live: 'until', act })).toMatch(/rack shows$/);
        }
      }
    }
  });

  it('say an act of a kind that has no act of its own', () => {
    const act: Act = { act: 'set', from: { as: 'turns', turns: 0 }, to: { as: 'turns', turns: -1.5 } };
    expectSentence(words.act(act));
    // Six flats of a nut are a turn.
    expect(words.act(act)).toContain('1 turn 3 flats shorter');
  });

  it('say what limits a plan, and why a careful hand prefers what it does', () => {
    const angle = { where: 'LR', angle: 'toe', chance: 0.623 } as const;
    expect(words.limit(angle)).toContain('62');
    const stop = [{ corner: 'LR', adjuster: 'rod', name: 'toe rod' }] as const;
    for (const one of [angle, { ...angle, fixed: true } as const, { ...angle, atStop: stop }]) {
      expectSentence(words.limit(one));
    }
    expect(words.limit({ ...angle, atStop: stop })).toContain('toe rod');
    for (const { id } of [...MOVE_PREFERENCES, ...PAIR_PREFERENCES, NOT_AGAIN]) expectSentence(words.preference(id));
  });

  it('say all that stands beside a plan and beside a reading', () => {
    const shims = [{ size: 1.5, count: 2 }];
    const named = { corner: 'LF', adjuster: 'a', name: 'front shims' } as const;
    const notes: Note[] = [
      { note: 'by-chart', names: ['cam'] },
      { note: 'bump-steer', corner: 'RF', before: 0.05, after: 0.31, travel: 25 },
      { note: 'strain', corners: ['LR', 'RR'], before: 0.2, after: 2.4 },
      { note: 'axle-goes', axle: 'rear', pinion: -0.12, aside: 1.24 },
      { note: 'axle-goes', axle: 'front', pinion: 0.3, aside: -0.01, kept: { pinion: 0.5, aside: 3 } },
      { note: 'axle-goes', axle: 'rear', pinion: 0.8, aside: 0, kept: { pinion: 0.5 }, beyond: true },
      { note: 'packs-unknown', packs: [named] },
      { note: 'below-least', pack: named, holds: 1, least: 1.5 },
      { note: 'shims-missing', shims },
      { note: 'shims-short', shims },
      { note: 'too-far-apart', both: [named, named], most: 1.5, by: 2.25 },
      { note: 'too-far-apart', both: [named, named], most: 0, by: 2 },
      { note: 'shims-borrowed', by: named, shims, from: [{ ...named, corner: 'RF' }] },
    ];
    for (const note of notes) expectSentence(words.note(note));
    const levels: Level[] = ['low', 'ok', 'high'];
    const suspects: Suspect[] = [
      'knuckle-or-spindle',
      'moved-pivot',
      'lower-arm',
      'upper-arm',
      'tower-in',
      'axle-beam',
    ];
    const hints: Hint[] = [
      { where: 'front', kind: 'included', difference: 1.25 },
      { where: 'front', kind: 'setback', difference: 1.4 },
      { where: 'front', kind: 'places-first', unknown: [named, { ...named, corner: 'RF' }] },
      { where: 'LF', kind: 'against-maker', sai: 'low', camber: 'high', included: 'ok', look: 'lower-arm' },
      { where: 'front', kind: 'shifted', to: 'right', look: 'subframe' },
      { where: 'RF', kind: 'moved-back', length: 12, look: 'wheel-moved-back' },
      { where: 'RF', kind: 'moved-back', length: 12, casterLow: true, look: 'wheel-moved-back' },
      { where: 'RF', kind: 'turns', by: -2, against: 'maker', look: 'steering-arm' },
      { where: 'front', kind: 'turns', by: 2, against: 'other-side', look: 'steering-arm' },
      ...suspects.map((look, i): Hint => {
        const [sai, camber, included] = [levels[i % 3]!, levels[(i + 1) % 3]!, levels[(i + 2) % 3]!];
        return { where: 'LF', kind: 'pattern', sai, camber, included, look };
      }),
    ];
    for (const hint of hints) expectSentence(words.hint(hint));
    expectSentence(words.noPose([{ adjuster: 'rod', position: 12 }]));
    const remedies = Object.values(adjusterKinds).flatMap(({ extension }): readonly Remedy[] => extension?.takes ?? []);
    for (const remedy of remedies) expect(words.remedy(remedy).length).toBeGreaterThan(5);
  });
});

describe('another language', () => {
  /** Says the name of the thing alone. */
  const bare: Words = {
    ...wordsOf(),
    act: ({ act }) => `<${act}>`,
    note: ({ note }) => `<${note}>`,
  };
  const known = languages as Record<string, Words>;
  beforeAll(() => {
    known.xx = bare;
  });
  afterAll(() => {
    delete known.xx;
  });

  it('is spoken where a request names it, and changes nothing else', () => {
    const request = planRequest(carFile('tarn-gt.json'));
    const [english, other] = [planMoves(request), planMoves({ ...request, language: 'xx' })];
    expect(english.moves.length).toBeGreaterThan(1);
    expect(other.moves.map(({ instruction }) => instruction)).toEqual(english.moves.map(({ act }) => `<${act.act}>`));
    const silent = ({ moves, notes: _, ...plan }: Plan) => ({
      ...plan,
      moves: moves.map(({ instruction: _, ...move }) => move),
    });
    expect(silent(other)).toEqual(silent(english));
    expect(planOfFile(carFile('tarn-gt.json'), { language: 'xx' }).moves[0]?.instruction).toMatch(/^<.*>$/);
  });

  it('is refused where it is not there', () => {
    const request = planRequest(carFile('tarn-gt.json'));
    expect(() => planMoves({ ...request, language: 'yy' })).toThrow(
      'language: "yy" is not allowed; allowed: one of en',
    );
  });
});
