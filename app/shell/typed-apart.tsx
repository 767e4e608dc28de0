/** What another phone had typed in the same place and not yet taken: to be used here, or thrown away. */

import type { DraftRecord } from '../../core/records/stored.ts';
import { typedApart } from '../../core/records/typed-apart.ts';
import { chosen } from '../../core/records/versions.ts';
import { Card } from '../parts/card.tsx';
import { fullTime } from '../state/days.ts';
import { draft, keep } from '../state/records.ts';
import { now } from '../store/index.ts';

type Texts = DraftRecord['texts'];

interface Props {
  /** Of the draft. */
  readonly id: string;
  /** What differs, a few words each. */
  readonly differs: (here: Texts, there: Texts) => readonly string[];
}

export function TypedApart({ id, differs }: Props) {
  const here = draft(id);
  const [other] = here ? typedApart(here) : [];
  const all = here && other ? differs(here.texts, other.texts) : [];
  if (!here || !other || all.length === 0) return null;
  const take = (version: DraftRecord) => keep(['drafts', chosen(here, version, now())]);
  return (
    <Card title="Typed on another phone" tone="caution">
      <p>Not taken there yet, typed until {fullTime(other.changed)}.</p>
      <ul class="typed-apart">
        {all.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      <div class="pair">
        <button type="button" class="quiet" onClick={() => take(other)}>
          Use these
        </button>
        <button type="button" class="quiet" onClick={() => take(here)}>
          Throw away
        </button>
      </div>
    </Card>
  );
}
