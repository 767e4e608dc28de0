/** What another phone had typed in a draft that this one has too. */
import type { DraftRecord } from './stored.ts';
import { otherVersions } from './versions.ts';

/** Its versions that nobody has decided about, the newest first; what was typed on the way to what is shown is none. */
export const typedApart = (record: DraftRecord): readonly DraftRecord[] =>
  otherVersions(record).filter(({ texts }) =>
    Object.entries(texts).some(([key, text]) => !record.texts[key]?.startsWith(text)),
  );
