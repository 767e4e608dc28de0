/** `npm run plan` as it is called: the same answer as the core's, exit code 2 and a message for a bad file. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { parseCarFile, planMoves, planRequest } from '../../core/index.ts';
import { starters } from '../../core/starters/catalogue.ts';
import { jobsIn, sentence } from '../tools/jobs.ts';
import { call, callAsNpm, root } from './call.ts';

const tarn = join(root, 'fixtures/cars/tarn-gt.json');
const folder = mkdtempSync(join(tmpdir(), 'cornerwright-plan-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const plan = (...args: string[]) => call('plan', args);
function spoilt(text: string): string {
  const path = join(folder, 'spoilt.json');
  writeFileSync(path, text);
  return path;
}

describe('npm run plan', () => {
  it.each(['practical', 'closest', 'least-work', 'surest'] as const)(
    '--json prints the plan of the core, %s',
    (style) => {
      const args = [tarn, '--json', ...(style === 'practical' ? [] : [`--${style}`])];
      const { stdout, status } = style === 'practical' ? callAsNpm('plan', args) : plan(...args);
      expect(status).toBe(0);
      const expected = planMoves(planRequest(parseCarFile(readFileSync(tarn, 'utf8')), { style }));
      expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(expected)));
    },
  );

  it('for people: how far an axle on links goes, found and predicted, after the two rods that are one job', () => {
    const rod = { id: 'lower', name: 'lower link', kind: 'threaded-rod', links: ['lowerBody'], lead: 1.5 };
    const { points } = starters.find(({ kind }) => kind === 'beam-linked')!;
    const file = JSON.parse(readFileSync(tarn, 'utf8'));
    file.car.rear = {
      suspension: { kind: 'beam-linked', points, camber: 0, toe: 0 },
      adjusters: [{ ...rod, range: [-4, 4], stepTurns: 0.5, reference: 0 }],
      steered: false,
    };
    file.spec = { rear: { thrustAngle: { low: -0.1, high: 0.1 } } };
    const wheel = { camber: -0.4, toe: 0 };
    const reading = {
      LR: { ...wheel, toe: 0.35 },
      RR: { ...wheel, toe: -0.35 },
      rear: { pinionAngle: 3.2, lateral: -4 },
    };
    file.visits = [{ id: 'v', carId: file.car.id, opened: '2026-01-05', rounds: [{ reading, settings: {} }] }];
    const { stdout } = plan(spoilt(JSON.stringify(file)), '--least-work');
    const told = String.raw`pinion (as it was|0\.\d\d° (up|down)), axle (where it was|\d\.\d mm to the (left|right))`;
    const both = 'LR reads camber .*, toe .*, RR reads camber .*, toe .*';
    expect(stdout.split('\n').flatMap((line) => line.match(/^\d+\. /)?.[0] ?? [])).toEqual(['1. ']);
    expect(stdout).toMatch(/left [\d½ a-z]+ (longer|shorter) \([\d.]+ mm\), right [\d½ a-z]+ (longer|shorter)/);
    expect(stdout).toMatch(new RegExp(`^ +Then ${both}, ${told}$`, 'm'));
    expect(stdout).toMatch(
      new RegExp(`^rear +pinion 3\\.20, sideways −4\\.0 mm +pinion 3\\.\\d\\d, sideways −\\d\\.\\d mm, ${told}$`, 'm'),
    );
  });

  it('for people: what front toe is against, and how the steering wheel stood and will stand', () => {
    const file = JSON.parse(readFileSync(tarn, 'utf8'));
    file.car.steeringRatio = 16;
    file.car.front.adjusters = file.car.front.adjusters.filter(({ kind }: { kind: string }) => kind === 'threaded-rod');
    file.car.rear.adjusters = [];
    file.spec = { front: { totalToe: { low: 0, high: 0.3 } } };
    const front = { LF: { toe: 0.08 }, RF: { toe: 0.08 }, toeReference: 'centreline', steeringWheel: -4 };
    const reading = { ...front, LR: { toe: 0.3 }, RR: { toe: -0.1 } };
    file.visits = [{ id: 'v', carId: file.car.id, opened: '2026-01-05', rounds: [{ reading, settings: {} }] }];
    const { stdout } = plan(spoilt(JSON.stringify(file)));
    expect(stdout).toContain('Front toe against the centre line.');
    // 4/16 at the road wheels; of thrust 0.2° as they are set straight along the car: 3°.
    expect(stdout).toContain(
      'The steering wheel stood 4° off level, to the left: with it level the front wheels point 0.25° to the right.',
    );
    expect(stdout).toMatch(
      /The thrust line stays 0\.20° to the right, .* the steering wheel will stand about [234]° to the right\./,
    );
    // Found and predicted are both with it level.
    expect(stdout).toMatch(/^LF +toe 0\.33 /m);
    expect(stdout).toMatch(/^RF +toe −0\.17 /m);
  });

  it('for people: each job in its order with what the rack reads after it, the chance, the cautions', () => {
    const { stdout, status } = plan(tarn);
    expect(status).toBe(0);
    const asked = planRequest(parseCarFile(readFileSync(tarn, 'utf8')), { style: 'practical' });
    const { moves, chance, odds } = planMoves(asked);
    const jobs = jobsIn({ moves });
    expect(jobs.length).toBeLessThan(moves.length);
    expect(stdout).toContain(`${jobs.length} moves`);
    let at = 0;
    for (const said of jobs.map(sentence)) {
      const found = stdout.indexOf(said, at);
      expect(found, said).toBeGreaterThanOrEqual(at);
      at = found + said.length;
    }
    expect(stdout).toContain(`${Math.round(chance * 100)} %`);
    expect(stdout).toContain(
      `Limited by ${odds[0]?.where} ${odds[0]?.angle}: ${Math.round((odds[0]?.chance ?? 0) * 100)} %`,
    );
    expect(stdout).toContain('qualified technician');
  });

  it.each([
    [
      'closest',
      /No other setting in the window comes closer to the aims: proven for all [\d.· ^]+ combinations of positions\./,
    ],
    [
      'least-work',
      /No other setting in the window takes less work: proven for all [\d.· ^]+ combinations of positions\./,
    ],
    ['practical', /Chosen from all [\d.· ^]+ combinations of positions\./],
    ['surest', /Chosen from all [\d.· ^]+ combinations of positions\./],
  ])('says what is proven of the plan: %s', (style, words) => {
    expect(plan(tarn, ...(style === 'practical' ? [] : [`--${style}`])).stdout).toMatch(words);
  });

  const file = JSON.parse(readFileSync(tarn, 'utf8'));
  const withAt = (at: string) => {
    const copy = structuredClone(file);
    copy.car.front.adjusters[0].at = at;
    return JSON.stringify(copy);
  };
  it.each([
    ['not JSON', 'abc', 'file: "abc" is not allowed; allowed: JSON text'],
    ['another format', '{"format":"other"}', 'file.format: "other" is not allowed; allowed: cornerwright'],
    ['a newer version', JSON.stringify({ ...file, version: 99 }), 'version: 99 is not allowed'],
    [
      'a point that the kind lacks',
      withAt('inner9'),
      'car.front.adjusters[0].at: "inner9" is not allowed; allowed: one of',
    ],
  ])('%s: exit code 2 and a message', (_, text, message) => {
    const { stderr, stdout, status } = plan(spoilt(text));
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain(message);
  });

  it.each([[[]], [['no-such-file.json']], [[tarn, 'another.json']], [[tarn, '--what']]])('%j: exit code 2', (args) => {
    const { stderr, status } = plan(...args);
    expect(status).toBe(2);
    expect(stderr).toContain('Usage: npm run plan -- FILE.json');
  });
});
