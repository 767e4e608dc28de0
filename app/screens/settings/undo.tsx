/** What undoing a restore would do, before it is done: what goes, what comes back, and what stays as it came since. */
import { fullTime } from '../../state/days.ts';
import { records } from '../../state/records.ts';
import { byId, type Entry, type store } from '../../store/index.ts';

export type Undo = NonNullable<Awaited<ReturnType<typeof store.inspectUndo>>>;

const ONE = {
  cars: 'car',
  visits: 'visit',
  readings: 'reading',
  moves: 'move',
  drafts: 'draft',
  preferences: 'setting',
};

const SHOWN = 30;

interface Props {
  /** What was done is an undo itself. */
  readonly isUndo: boolean;
  readonly undo: Undo;
  readonly onUndo: () => void;
  readonly onLeave: () => void;
}

export function UndoCounts({ isUndo, undo: { at, goes, returns, stays }, onUndo, onLeave }: Props) {
  const any = goes.length + returns.length > 0;
  const lines = named(stays.map(({ entry }) => entry));
  return (
    <div class="counts">
      <p>
        What was changed {fullTime(at)}
        {any ? ':' : ' was all changed since, or holds what came since. Nothing of it is left to undo.'}
      </p>
      {goes.length > 0 && <p>Goes: {counted(goes)}.</p>}
      {returns.length > 0 && <p>Comes back as it was: {counted(returns)}.</p>}
      {stays.length > 0 && (
        <div class="card card-caution">
          <p>Stays, as it was changed since or holds what came since:</p>
          <ul>
            {lines.slice(0, SHOWN).map((line) => (
              <li key={line}>{line}</li>
            ))}
            {lines.length > SHOWN && <li>And {lines.length - SHOWN} cars more.</li>}
          </ul>
        </div>
      )}
      {any && (
        <>
          <p class="soft">All that came since stays, and this can be undone too.</p>
          <button type="button" class="quiet wide" onClick={onUndo}>
            {isUndo ? 'Bring it back' : 'Undo it'}
          </button>
        </>
      )}
      <button type="button" class="quiet wide" onClick={onLeave}>
        Leave it as it is
      </button>
    </div>
  );
}

/** "1 car, 3 moves" */
function counted(entries: readonly Entry[]): string {
  const counts = new Map<keyof typeof ONE, number>();
  for (const [name] of entries) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].map(([name, count]) => `${count} ${ONE[name]}${count === 1 ? '' : 's'}`).join(', ');
}

/** "Marl estate: 1 car, 2 visits", a line for each car; what is of none comes last. */
function named(entries: readonly Entry[]): readonly string[] {
  const byCar = new Map<string, Entry[]>();
  for (const entry of entries) {
    const label = labelOf(entry);
    byCar.set(label, [...(byCar.get(label) ?? []), entry]);
  }
  return [...byCar]
    .sort(([a], [b]) => Number(a === '') - Number(b === ''))
    .map(([label, list]) => (label ? `${label}: ${counted(list)}` : counted(list)));
}

/** What the car is called that a record is of. */
function labelOf([store, record]: Entry): string {
  const { cars, visits } = records.value;
  const place = store === 'drafts' ? record.id.slice(record.id.indexOf(':') + 1) : record.id;
  const visit = byId(visits, 'visitId' in record ? record.visitId : place);
  const car = byId(cars, visit?.carId ?? ('carId' in record ? record.carId : place));
  return car ? String(car.car.label) : '';
}
