/** Builds of this car that were saved before, or on another phone: each is kept, and can be looked at and taken. */
import type { CarRecord } from '../../../core/records/stored.ts';
import { keptVersions } from '../../../core/records/versions.ts';
import { buildName, differences } from '../../state/builds.ts';
import { draftFrom } from './form.ts';

export function KeptBuilds({ record }: { readonly record: CarRecord }) {
  const kept = keptVersions(record);
  if (kept.length === 0) return null;
  return (
    <details class="kept-builds">
      <summary>{kept.length === 1 ? 'One other build is kept' : `${kept.length} other builds are kept`}</summary>
      {kept.map((one) => (
        <div key={`${one.changed} ${differences(record, one).join()}`}>
          <p>
            {sentence(buildName(one))}. Differs in: {differences(record, one).join(', ')}.
          </p>
          <button type="button" class="quiet wide" onClick={() => draftFrom(one, `The build ${buildName(one)}`)}>
            Look at it
          </button>
        </div>
      ))}
    </details>
  );
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
