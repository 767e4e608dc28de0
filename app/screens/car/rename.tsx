/** Name and plate of a car, typed in the place where they stand. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { CarRecord } from '../../../core/records/stored.ts';
import { leaveName, namesTyped, rename, typeName } from '../../state/renaming.ts';

export function Rename({ record: { id } }: { readonly record: CarRecord }) {
  const names = namesTyped(id);
  const [isMissing, setMissing] = useState(false);
  const first = useRef<HTMLInputElement>(null);
  useEffect(() => first.current?.focus(), []);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        setMissing(!rename(id));
      }}
    >
      <label class="field">
        <span>Name</span>
        <input
          ref={first}
          type="text"
          maxLength={120}
          value={names.label}
          onInput={(event) => typeName(id, { ...names, label: event.currentTarget.value })}
        />
        {isMissing && !names.label.trim() && (
          <span class="wrong" role="alert">
            Name is missing: make, model, colour, how you would ask for it
          </span>
        )}
      </label>
      <label class="field">
        <span>Plate</span>
        <input
          type="text"
          maxLength={40}
          value={names.plate}
          onInput={(event) => typeName(id, { ...names, plate: event.currentTarget.value })}
        />
      </label>
      <div class="pair after-pair">
        <button type="button" class="quiet" onClick={() => leaveName(id)}>
          Leave it
        </button>
        <button type="submit" class="quiet">
          Save the name
        </button>
      </div>
    </form>
  );
}
