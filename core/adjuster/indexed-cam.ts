import * as v from 'valibot';
import type { Position, Vec3 } from '../contract.ts';
import type { Place } from '../said.ts';
import { AT } from './ask.ts';
import { base, several, stamped, text, vector } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { ruleText } from './rule-text.ts';

/** A stamped 3 is the same face whether a file says 3 or "3". */
const same = (a: Position, b: Position): boolean => String(a) === String(b);

const schema = v.pipe(
  v.object({
    ...base('indexed-cam'),
    at: text({ is: 'point-name' }),
    positions: v.pipe(
      several(v.object({ label: stamped, offset: vector }), 200, 'positions'),
      v.check(
        (list) => new Set(list.map((p) => String(p.label))).size === list.length,
        ruleText({ is: 'labels-differ' }),
      ),
      v.readonly(),
    ),
    reference: stamped,
  }),
  v.forward(
    v.check((cam) => cam.positions.some((p) => same(p.label, cam.reference)), ruleText({ is: 'own-label' })),
    ['reference'],
  ),
);
type IndexedCam = v.InferOutput<typeof schema>;

const placeOf = (label: Position): Place => ({ as: 'number', label });
const labels = (cam: IndexedCam): Position[] => cam.positions.map((p) => p.label);

/** A bush with an off-centre hole and numbered faces: each number puts point `at` at its own offset. */
export const indexedCam: AdjusterKind = {
  kind: 'indexed-cam',
  name: 'Numbered cam',
  schema,
  cam: true,
  touches: (cam) => ({ points: [cam.at] }),
  positions: (cam) => labels(cam as IndexedCam),
  allowed: (cam) => ({ is: 'one-of', of: labels(cam as IndexedCam) }),
  accepts: (cam, position) => labels(cam as IndexedCam).some((label) => same(label, position)),
  effect: (cam, position) => {
    const found = (cam as IndexedCam).positions.find((p) => same(p.label, position));
    return { shift: { [cam.at]: found?.offset ?? [0, 0, 0] } };
  },
  act: (_, from, to) => ({ act: 'turn-to-number', from, to }),
  place: (_, position) => placeOf(position),
  step: (cam) => {
    const all = labels(cam as IndexedCam);
    const i = all.findIndex((label) => same(label, cam.reference));
    const to = all[i + 1] ?? all[i - 1] ?? cam.reference;
    return {
      from: cam.reference,
      to,
      said: { step: 'to', from: placeOf(cam.reference), to: { as: 'label', label: to } },
    };
  },
  fields: [
    AT,
    {
      name: 'positions',
      label: 'Numbers of the cam',
      ask: {
        as: 'table',
        columns: [
          { name: 'label', label: 'number', as: 'label' },
          { name: 'offset.0', label: 'forward', as: 'length' },
          { name: 'offset.1', label: 'outboard', as: 'length' },
          { name: 'offset.2', label: 'up', as: 'length' },
        ],
      },
    },
    { name: 'reference', label: 'Number up when the dimensions were taken', ask: { as: 'text' } },
  ],
  start: {},
  sample: {
    adjuster: {
      reference: '1',
      positions: Array.from({ length: 8 }, (_, i) => ({ label: String(i + 1), offset: [0, 0, 0] })),
    },
    from: '3',
    to: '5',
  },
  extension: { unit: 'mm', takes: ['offset-bush', 'offset-bush'] },
  tolerance: {
    usual: 0.2,
    unit: 'mm',
    // Along x, y and z alone, where the cam moves its point at all.
    error: (cam, _, __, by) =>
      [0, 1, 2]
        .filter((axis) => (cam as IndexedCam).positions.some(({ offset }) => offset[axis] !== 0))
        .map((axis) => ({ shift: { [cam.at]: [0, 1, 2].map((i) => (i === axis ? by : 0)) as unknown as Vec3 } })),
  },
  effort: 10,
};
