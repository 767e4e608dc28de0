/** A car from a file: what the terminal reads and another phone writes. Ids decide, so that importing twice adds nothing. */
import { useState } from 'preact/hooks';
import { fromCarFile } from '../../../core/records/exchange.ts';
import { engine } from '../../engine/index.ts';
import { go } from '../../routes.ts';
import { keep, type Records, records } from '../../state/records.ts';
import { type Entry, newId, now } from '../../store/index.ts';

export function ImportButton() {
  const [message, setMessage] = useState('');
  const open = async (file: File | undefined) => {
    if (!file) return;
    try {
      const id = await importCar(await file.text());
      go({ screen: 'car', id }, 'replace');
    } catch (error) {
      setMessage(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <label class="field">
      <span>Or open a car file</span>
      <input
        type="file"
        accept=".json,application/json"
        onChange={(event) => void open(event.currentTarget.files?.[0])}
      />
      {message && (
        <span class="wrong" role="alert">
          {message}
        </span>
      )}
    </label>
  );
}

/** Adds what is not here yet and returns the car's id. @throws InputError, and then nothing is touched */
async function importCar(text: string): Promise<string> {
  const file = await engine.call('parseCarFile', [text]);
  const { car, visits, readings, moves } = fromCarFile(file, { now: now(), makeId: newId });
  const all: Records = records.value;
  const missing = <T extends { readonly id: string }>(list: readonly T[], here: readonly { readonly id: string }[]) =>
    list.filter(({ id }) => !here.some((one) => one.id === id));
  const entries: Entry[] = [
    ...missing([car], all.cars).map((one) => ['cars', one] as const),
    ...missing(visits, all.visits).map((one) => ['visits', one] as const),
    ...missing(readings, all.readings).map((one) => ['readings', one] as const),
    ...missing(moves, all.moves).map((one) => ['moves', one] as const),
  ];
  if (entries.length > 0) keep(...entries);
  return car.id;
}
