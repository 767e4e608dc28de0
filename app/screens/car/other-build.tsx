/** The car was edited on another phone too. Both builds are kept; which one is planned with is for a person to say. */
import type { CarRecord } from '../../../core/records/stored.ts';
import { chosen } from '../../../core/records/versions.ts';
import { Card } from '../../parts/card.tsx';
import { buildName, differences } from '../../state/builds.ts';
import { keep } from '../../state/records.ts';
import { now } from '../../store/index.ts';

export function OtherBuild({ car, other }: { readonly car: CarRecord; readonly other: CarRecord }) {
  const take = (version: CarRecord) => keep(['cars', chosen(car, version, now())]);
  return (
    <Card title="Edited on another phone too" tone="caution">
      <dl class="facts">
        <div>
          <dt>In use</dt>
          <dd>{buildName(car)}</dd>
        </div>
        <div>
          <dt>Other</dt>
          <dd>{buildName(other)}</dd>
        </div>
        <div>
          <dt>Differs</dt>
          <dd>{differences(car, other).join(', ')}</dd>
        </div>
      </dl>
      <div class="pair">
        <button type="button" class="quiet" onClick={() => take(other)}>
          Use the other
        </button>
        <button type="button" class="quiet" onClick={() => take(car)}>
          Keep this one
        </button>
      </div>
      <p class="soft after-pair">Neither is lost: Build has both to look at.</p>
    </Card>
  );
}
