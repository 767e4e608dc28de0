/** A move on file whose position is a label of what was fitted before: said as it stands there, never as a number it is not. */
import { expect, it } from 'vitest';
import { jobStands, jobWay } from '../../app/state/jobs.ts';
import { positionText } from '../../app/state/standing.ts';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import type { Adjuster, Car } from '../../core/contract.ts';
import { car } from '../store/records.ts';

const fitted = (adjuster: Adjuster): Car => ({ ...car.car, front: { ...car.car.front, adjusters: [adjuster] } });

it.each(Object.values(adjusterKinds).map((kind) => [kind.kind, kind.sample.adjuster] as const))(
  'of %s',
  (kind, sample) => {
    const adjuster = { id: 'a', reference: 0, ...sample, kind } as Adjuster;
    for (const label of ['9999-12-31T23:59:59Z', 'B2', '']) {
      const move = { corner: 'LF', adjuster: 'a', from: label, to: adjuster.reference } as const;
      const said = [
        jobWay(fitted(adjuster), [move]),
        jobStands(fitted(adjuster), [move]),
        positionText(adjuster, label),
      ];
      expect(said.join()).not.toMatch(/NaN|undefined/);
      if (typeof adjuster.reference === 'number') for (const one of said) expect(one).toContain(label);
    }
  },
);
