/** A car over its visits: a line for each angle, as found and as left with its window, and the same as a table. */
import './history.css';
import { signal } from '@preact/signals';
import type { CarRecord } from '../../../core/records/stored.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Printed } from '../../parts/printed.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { Verdict } from '../../parts/verdict.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { fileName, saveFile } from '../../shell/save-file.ts';
import { longDay, shortDay } from '../../state/days.ts';
import { verdictOf } from '../../state/judge.ts';
import { records } from '../../state/records.ts';
import { valueText } from '../../state/units.ts';
import { byId, now } from '../../store/index.ts';
import { AngleLegend, AngleLine } from './angle-line.tsx';
import { noteOf } from './note.ts';
import { historyPages } from './on-paper.tsx';
import { type History, type Line, type Past, pastOf } from './past.ts';
import { historyTable } from './table-file.ts';

const picked = signal<string | undefined>(undefined);

export function HistoryScreen() {
  const id = route.value.screen === 'history' ? route.value.id : '';
  const record = byId(records.value.cars, id);
  const history = record && pastOf(records.value, record);
  return (
    <div class="screen">
      <Header
        title={record?.car.label ?? 'No such car'}
        plate={record?.car.plate}
        back={record ? { screen: 'car', id } : { screen: 'cars' }}
      />
      {record && history ? <Lines record={record} history={history} /> : <Sheet>{null}</Sheet>}
      <ActionBar
        primary={{ label: 'To the car', onPress: () => go(record ? { screen: 'car', id } : { screen: 'cars' }) }}
        secondary={[
          { label: 'Print', onPress: () => print() },
          ...(record && history && history.past.length > 0
            ? [{ label: 'Table file', onPress: () => saveTable(record, history) }]
            : []),
        ]}
      />
    </div>
  );
}

/** For a spreadsheet. */
const saveTable = (record: CarRecord, history: History): void =>
  saveFile(historyTable(history, record), fileName(record.car.label, 'csv'), 'text/csv');

interface LinesProps {
  readonly record: CarRecord;
  readonly history: History;
}

function Lines({ record: { car }, history }: LinesProps) {
  const { past, lines } = history;
  const note = noteOf(history, car);
  const formatOf = (line: Line) => (value: number) => valueText(line.angle, value, car.wheel.rimDiameter);
  return (
    <>
      <Sheet>
        {past.length === 0 ? <p class="step history-head">Nothing measured yet.</p> : <Head past={past} note={note} />}
        {lines.map((line) => (
          <AngleStep key={line.id} line={line} past={past} format={formatOf(line)} />
        ))}
      </Sheet>
      <Printed
        title={car.label}
        plate={car.plate}
        what={`history, ${visitsText(past)}`}
        day={longDay(now())}
        pages={() => historyPages(history, formatOf, note)}
      />
    </>
  );
}

const visitsText = (past: readonly Past[]): string => `${past.length} visit${past.length === 1 ? '' : 's'}`;

function Head({ past, note }: { readonly past: readonly Past[]; readonly note: string }) {
  return (
    <div class="step history-head">
      <p>{visitsText(past)}</p>
      <AngleLegend />
      {note && <p class="soft">{note}</p>}
    </div>
  );
}

interface LineProps {
  readonly line: Line;
  readonly past: readonly Past[];
  readonly format: (value: number) => string;
}

function AngleStep({ line, past, format }: LineProps) {
  const value = past.at(-1)?.left(line);
  const isOpen = picked.value === line.id;
  return (
    <PunchedStep
      state={isOpen ? 'live' : 'done'}
      title={
        value !== undefined && line.window ? (
          <Verdict state={verdictOf(value, line.window)} label={line.name} />
        ) : (
          line.name
        )
      }
      time={value === undefined ? '' : format(value)}
      onPick={() => {
        picked.value = isOpen ? undefined : line.id;
      }}
    >
      <AngleLine past={past} line={line} format={format} />
      {isOpen && <PastTable past={past} line={line} format={format} />}
    </PunchedStep>
  );
}

function PastTable({ past, line, format }: LineProps) {
  const show = (value: number | undefined) => (value === undefined ? '–' : format(value));
  return (
    <table class="paper-table">
      <thead>
        <tr>
          <th scope="col">Visit</th>
          <th scope="col">Found</th>
          <th scope="col">Left</th>
        </tr>
      </thead>
      <tbody>
        {past.map((one) => (
          <tr key={one.day}>
            <th scope="row">{shortDay(one.day)}</th>
            <td>{show(one.found(line))}</td>
            <td>{show(one.left(line))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
