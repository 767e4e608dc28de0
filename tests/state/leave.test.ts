/** Leaving a move this time: nothing else is asked anew, and only a plan that is made anew goes without it. */
import { beforeEach, describe, expect, it } from 'vitest';
import { headingOf, isWhole, jobStands, jobsLeft, jobsMade, leftJobs, madeText } from '../../app/state/jobs.ts';
import { leave, leftIn, takeUp } from '../../app/state/leave.ts';
import { questionOf } from '../../app/state/planning.ts';
import { records } from '../../app/state/records.ts';
import type { RoundView, VisitView } from '../../app/state/visits.ts';
import { planOfFile } from '../../core/index.ts';
import type { MoveRecord } from '../../core/records/stored.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { carFile } from '../core/records/fixture.ts';

const file = carFile('tarn-gt.json');
const { car, spec = {} } = file;
const [first] = file.visits?.at(-1)?.rounds ?? [];
const record = { ...first!, id: 'r', visitId: 'v', at: '2026-01-01', settings: {}, typed: {} };
const visit = { id: 'v', carId: car.id, opened: '2026-01-01' };
const LF_ROD = { corner: 'LF', adjuster: 'tie-rod' } as const;
const RF_ROD = { corner: 'RF', adjuster: 'tie-rod' } as const;
const mark = (id: string, adjuster: string, outcome: MoveRecord['outcome'], at = id): MoveRecord => ({
  ...{ id, visitId: 'v', readingId: 'r', at, corner: 'RF', adjuster, from: 3, to: outcome === 'done' ? 4 : 3, outcome },
});

function viewOf(moves: readonly MoveRecord[] = []): [VisitView, RoundView] {
  const last = moves.map(({ outcome }) => outcome !== 'done').lastIndexOf(true);
  const round = { record, moves, base: moves.slice(0, last + 1), done: moves.slice(last + 1) };
  return [{ visit, car: { id: car.id, car, spec, changed: '2026-01-01' }, rounds: [round] }, round];
}

beforeEach(() => {
  records.value = { cars: [], visits: [visit], readings: [record], moves: [], drafts: [], preferences: [] };
});

describe('a move that is left', () => {
  it('is asked of the planner as before: the rest stands', () => {
    const before = questionOf(...viewOf());
    leave(...viewOf(), [LF_ROD]);
    expect(questionOf(...viewOf())).toEqual(before);
    expect(leftIn(...viewOf())).toEqual({ now: [LF_ROD], before: [] });
    // A move that is made meanwhile changes nothing.
    expect(leftIn(...viewOf([mark('1', 'upper-front', 'done')])).now).toEqual([LF_ROD]);
  });

  it('is not planned with once the plan is made anew, and is left for that one too', () => {
    leave(...viewOf(), [LF_ROD]);
    const seized = viewOf([mark('1', 'upper-front', 'wont-move')]);
    expect(leftIn(...seized)).toEqual({ now: [], before: [LF_ROD] });
    expect(questionOf(...seized).options.locked).toEqual([LF_ROD]);
    leave(...seized, [RF_ROD]);
    expect(leftIn(...seized)).toEqual({ now: [RF_ROD], before: [LF_ROD] });
    // The mark is taken back: the first plan again, both left of it.
    expect(leftIn(...viewOf()).before).toEqual([]);
    expect(leftIn(...viewOf()).now).toEqual([LF_ROD, RF_ROD]);
  });

  it('is taken up again', () => {
    leave(...viewOf(), [LF_ROD, RF_ROD]);
    takeUp(...viewOf(), [LF_ROD]);
    expect(leftIn(...viewOf()).now).toEqual([RF_ROD]);
  });

  it('is left of this round alone', () => {
    leave(...viewOf(), [LF_ROD]);
    const [view, round] = viewOf();
    expect(leftIn(view, { ...round, record: { ...record, id: 'next' } })).toEqual({ now: [], before: [] });
  });
});

describe('jobs of a round', () => {
  const plan = (...asked: [VisitView, RoundView]) => {
    const { file, options } = questionOf(...asked);
    return planOfFile(file, { ...options, style: 'practical' });
  };

  it('are left until each of their moves is marked', () => {
    const moves = plan(...viewOf());
    const all = jobsLeft(moves, viewOf()[1]);
    const arm = all.find((job) => job.length > 1)!;
    expect(arm.map(({ job }) => job?.end)).toEqual(['front', 'rear']);
    const done = arm.map(({ corner, adjuster, from, to }, i) => ({
      ...mark(String(i), adjuster, 'done'),
      corner,
      from,
      to,
    }));
    expect(jobsLeft(moves, viewOf(done)[1])).toHaveLength(all.length - 1);
    expect(
      jobsLeft(moves, viewOf(done.slice(0, 1))[1]).find((job) => job[0]?.adjuster === arm[1]?.adjuster),
    ).toHaveLength(1);
  });

  it('are one line where they were marked with one touch, and a line each where not', () => {
    const arm = [mark('1', 'upper-front', 'done', 'now'), mark('2', 'upper-rear', 'done', 'now')];
    const count = (moves: readonly MoveRecord[]) => jobsMade(car, moves).map((job) => job.length);
    expect(count(arm)).toEqual([2]);
    expect(count([arm[0]!, { ...arm[1]!, at: 'later' }])).toEqual([1, 1]);
    expect(count([arm[0]!, mark('2', 'upper-rear', 'wont-move', 'now')])).toEqual([1, 1]);
    const seized = arm.map((one) => ({ ...one, to: 3, outcome: 'wont-move' as const }));
    expect(count(seized)).toEqual([2]);
    expect(jobStands(car, seized)).toBe('front 3 mm, rear 3 mm');
    expect(count([mark('0', 'tie-rod', 'done', 'now'), ...arm])).toEqual([1, 2]);
  });

  it('are called after what they are, and the touch after them', () => {
    const arm = [mark('1', 'upper-front', 'done'), mark('2', 'upper-rear', 'done')];
    expect(headingOf(car, arm)).toEqual({ where: 'RF', title: 'Upper arm, front and rear' });
    expect(madeText(car, arm)).toBe('RF upper arm made, front and rear');
    expect(madeText(car, arm.slice(0, 1))).toBe('RF upper arm, front shims made');
    expect(madeText(car, [LF_ROD])).toBe('LF tie rod made');
    const links = startersFor('beam-linked', 'rear')[0]!;
    const panhard = {
      id: 'rod',
      name: 'Lateral rod',
      kind: 'threaded-rod',
      links: ['rodBody'],
      lead: 1.5,
      reference: 0,
    };
    const suspension = suspensionFromStarter(links, 'rear');
    const once = { ...car, rear: { suspension, adjusters: [panhard], steered: false } };
    expect(madeText(once, [{ corner: 'LR', adjuster: 'rod' }])).toBe('Rear lateral rod made');
    expect([isWhole(car, arm), isWhole(car, [LF_ROD])]).toEqual([false, true]);
    const wedge = { id: 'wedge', kind: 'axle-wedge', degrees: [1, 2], reference: 0 };
    const wedged = { ...car, front: { ...car.front, adjusters: [wedge] } };
    expect(
      isWhole(wedged, [
        { corner: 'LF', adjuster: 'wedge' },
        { corner: 'RF', adjuster: 'wedge' },
      ]),
    ).toBe(true);
    expect(leftJobs(car, { now: [LF_ROD, ...arm], before: [] })).toEqual([[LF_ROD], arm]);
  });
});
