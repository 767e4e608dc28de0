/**
 * Every write that the app makes, done as its screens do it: what it stands for in the code, and the state of a visit in
 * which it can be done. `who-writes.ts` finds what is in the code and not here. Long: one table, a case a write.
 */

import { installPracticeCar } from '../../app/practice/install.ts';
import * as bench from '../../app/state/bench.ts';
import * as byRack from '../../app/state/by-rack.ts';
import { correctedIn, saidNo, saidYes, takeBackYes } from '../../app/state/cause.ts';
import { correctReading } from '../../app/state/correct-reading.ts';
import { bringBackCar, bringBackVisit, deleteCar, deleteVisit } from '../../app/state/deleting.ts';
import { pickCell, pressKey, showDecimals } from '../../app/state/entry.ts';
import { leave, takeUp } from '../../app/state/leave.ts';
import { measureNow } from '../../app/state/measure-now.ts';
import { setNote } from '../../app/state/move-note.ts';
import { choosePlan } from '../../app/state/planning.ts';
import * as preferences from '../../app/state/preferences.ts';
import { draft, dropDraft, keep, keepDraft, records } from '../../app/state/records.ts';
import { beginRename, leaveName, rename, typeName } from '../../app/state/renaming.ts';
import { moveId } from '../../app/state/same-id.ts';
import { leaveAsItStands, openAgain, signOff, standsOpen } from '../../app/state/sign-off.ts';
import { choose, dropVisitDrafts, entryDraft, visitDraft } from '../../app/state/stage.ts';
import { otherCorrections, takeCorrection } from '../../app/state/two-corrections.ts';
import * as visit from '../../app/state/visit-actions.ts';
import { noteLook, setOdometer, setTechnicianOf } from '../../app/state/visit-notes.ts';
import { type RoundView, type VisitView, visitView } from '../../app/state/visits.ts';
import { byId, newId, now } from '../../app/store/index.ts';
import type { Adjuster, Explanation, Move } from '../../core/contract.ts';
import type { CarRecord, DraftRecord, MoveRecord, ReadingRecord } from '../../core/records/stored.ts';
import { typedApart } from '../../core/records/typed-apart.ts';
import { chosen, edited } from '../../core/records/versions.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { car, frozenRecords, reading } from '../store/records.ts';

export interface Write {
  /** What of the code writes so, as `file#name`. */
  readonly of: readonly string[];
  /** What has to be there before. */
  readonly before?: (own: Own) => void;
  /** Ends when it is on the screen: the disk is not waited for. */
  readonly act: (own: Own) => unknown;
}
/** A car and its visit that no other case has touched. */
export interface Own {
  readonly carId: string;
  readonly visitId: string;
}

export function makeOwn(): Own {
  const [carId, visitId] = [newId(), newId()];
  const own: CarRecord = { ...car, id: carId, car: { ...car.car, id: carId } };
  keep(['cars', own], ['visits', { id: visitId, carId, opened: now() }]);
  return { carId, visitId };
}

const viewOf = ({ visitId }: Own): VisitView => visitView(records.value, visitId)!;
const carOf = ({ carId }: Own): CarRecord => byId(records.value.cars, carId)!;
const typed = (own: Own, text = '1.25'): void => keepDraft(entryDraft(own.visitId), { 'LF.caster': text }, 'LF.caster');
const measured = (own: Own): void => {
  const record: ReadingRecord = { ...reading, id: newId(), visitId: own.visitId, at: now() };
  keep(['readings', record]);
};
const REF = { corner: 'LF', adjuster: 'upper-front-pack' } as const;
function made(own: Own): MoveRecord {
  const round = viewOf(own).rounds.at(-1)!;
  const move = { ...REF, visitId: own.visitId, readingId: round.record.id, from: 6, to: 3, outcome: 'done' as const };
  const record = { ...move, id: moveId(records.value.moves, move), at: now() };
  keep(['moves', record]);
  return record;
}
/** Two of them: made on two phones, each without the other. */
function corrected(own: Own, camber: number): void {
  const { id, ...first } = records.value.readings.find(
    ({ visitId, replaces }) => visitId === own.visitId && !replaces,
  )!;
  const LF = { ...first.reading.LF, camber };
  keep(['readings', { ...first, id: newId(), at: now(), replaces: id, reading: { ...first.reading, LF } }]);
}
/** A move was made, and what was read after it. */
function remeasured(own: Own): void {
  measured(own);
  made(own);
  keep([
    'readings',
    { ...reading, id: newId(), visitId: own.visitId, at: now(), settings: { LF: { [REF.adjuster]: 3 } } },
  ]);
}
const cause = (rest: Partial<Explanation>): Explanation => ({
  ...{ cause: 'not-made', corner: REF.corner, probability: 0.9, text: '', left: [] },
  ...rest,
});
const notMade = cause({ correction: { of: 'moves', stand: [{ ...REF, at: 6 }] } });
const wrongSign = cause({
  ...{ cause: 'sign', angle: 'camber' },
  correction: { of: 'reading', reading: 'after', values: [{ corner: 'LF', angle: 'camber', value: 0.5 }] },
});
const reversedOf = (own: Own): Explanation => {
  const [adjuster] = carOf(own).car.front.adjusters as readonly [Adjuster];
  return cause({
    cause: 'reversed',
    correction: { of: 'build', corner: 'LF', adjuster: { ...adjuster, name: 'Turned' } },
  });
};
/** An entry that came in from another phone stands beside the one here. */
const typedTwice = (own: Own): DraftRecord => {
  const here = { id: entryDraft(own.visitId), texts: { 'LF.caster': '1.25' }, changed: now() };
  const there = { ...here, texts: { 'LF.caster': '2.5' }, changed: '2026-01-01T00:00:00.000Z' };
  return { ...here, versions: [there] };
};
/** A build that came in from another phone stands beside the one here. */
const twofold = (own: Own): CarRecord => {
  const record = carOf(own);
  return { ...record, versions: [{ ...record, changed: '2026-01-01T00:00:00.000Z' }] };
};

const ACTIONS = 'app/state/visit-actions.ts#';
const SETTINGS = 'app/state/preferences.ts#';
const DELETING = 'app/state/deleting.ts#';
const RENAMING = 'app/state/renaming.ts#';
const SCREENS = 'app/screens/';

export const WRITES: Readonly<Record<string, Write>> = {
  'a visit begun': {
    of: [`${ACTIONS}beginVisit`],
    before: (own) => void keep(['visits', { ...viewOf(own).visit, closed: now() }]),
    act: (own) => visit.beginVisit(carOf(own)),
  },
  'an entry begun': { of: [`${ACTIONS}beginEntry`], act: (own) => visit.beginEntry(viewOf(own)) },
  'a digit typed': {
    of: [
      'app/state/records.ts#keepDraft',
      ...['standing.tsx#useStandings', 'practice-take.tsx#PracticeTake'].map((name) => `${SCREENS}visit/${name}`),
      ...['build/form.ts#useForm', 'build/form.ts#draftFrom', 'settings/gauge.tsx#GaugeSettings'].map(
        (name) => SCREENS + name,
      ),
    ],
    before: typed,
    act: (own) => typed(own, '1.257'),
  },
  'digits typed faster than they are written': {
    of: ['app/state/records.ts#keep'],
    act: (own) => ['1', '1.', '1.2', '1.25'].forEach((text) => void typed(own, text)),
  },
  'a key of the pad': {
    of: ['app/state/entry.ts#pressKey'],
    before: typed,
    act: (own) => pressKey(viewOf(own), '1', 0),
  },
  'another cell touched': {
    of: ['app/state/entry.ts#pickCell'],
    before: typed,
    act: (own) => pickCell(viewOf(own), 'RF.caster'),
  },
  'as many decimals as the rack shows': {
    of: ['app/state/entry.ts#showDecimals'],
    act: (own) => showDecimals(viewOf(own), visit.entryFields(viewOf(own))[0]!, 3),
  },
  'what another phone had typed is used': {
    of: ['app/shell/typed-apart.tsx#TypedApart'],
    before: (own) => void keep(['drafts', typedTwice(own)]),
    act: (own) => {
      const here = draft(entryDraft(own.visitId))!;
      void keep(['drafts', chosen(here, typedApart(here)[0]!, now())]);
    },
  },
  'another form': {
    of: [`${ACTIONS}changeForm`],
    before: typed,
    act: (own) => visit.changeForm(viewOf(own), { total: true, sai: true }),
  },
  'all cells walked through': {
    of: [`${ACTIONS}entryReady`],
    before: typed,
    act: (own) => visit.entryReady(viewOf(own)),
  },
  'a reading taken down': {
    of: [`${ACTIONS}takeDown`],
    before: typed,
    act: (own) => visit.takeDown(viewOf(own), {}),
  },
  'a re-measure taken down': {
    of: [`${ACTIONS}entryReady`],
    before: (own) => {
      measured(own);
      made(own);
      typed(own);
    },
    act: (own) => visit.entryReady(viewOf(own)),
  },
  'a reading opened to be corrected': {
    of: ['app/state/correct-reading.ts#correctReading'],
    before: measured,
    act: (own) => correctReading(viewOf(own), viewOf(own).rounds[0]!),
  },
  'one of two corrections chosen': {
    of: ['app/state/two-corrections.ts#takeCorrection'],
    before(own) {
      measured(own);
      corrected(own, -0.4);
      corrected(own, -0.55);
    },
    act(own) {
      const [round] = viewOf(own).rounds as [RoundView];
      takeCorrection(viewOf(own), round, otherCorrections(viewOf(own), round)[0]!);
    },
  },
  'a figure typed at the bench': {
    of: ['app/state/bench.ts#typeAtBench'],
    act: (own) => bench.typeAtBench(`tool-${own.visitId}`, { front: '1500' }, own.visitId),
  },
  'the figures of a tool cleared': {
    of: ['app/state/bench.ts#clearBench'],
    before: (own) => bench.typeAtBench(`tool-${own.visitId}`, { front: '1500' }, own.visitId),
    act: (own) => bench.clearBench(`tool-${own.visitId}`),
  },
  'how well an instrument repeats': {
    of: ['app/state/bench.ts#setScatter'],
    act: () => bench.setScatter('tape', 0.45),
  },
  'a result of the bench handed to a visit': {
    of: ['app/state/bench.ts#handOver'],
    before: (own) => typed(own),
    act: (own) => bench.handOver(viewOf(own), [{ where: 'LF', angle: 'toe', value: 0.12, by: 'string', sd: 0.05 }]),
  },
  'a result handed over where the moves are on': {
    of: ['app/state/bench.ts#handOver'],
    before: measured,
    act: (own) => bench.handOver(viewOf(own), [{ where: 'front', angle: 'totalToe', value: 0.3, by: 'tape', sd: 0.1 }]),
  },
  'a cause said no to': {
    of: ['app/state/cause.ts#saidNo'],
    before: remeasured,
    act: (own) => saidNo(viewOf(own), viewOf(own).rounds[1]!, notMade),
  },
  'a move corrected, as a cause was said yes to': {
    of: ['app/state/cause.ts#saidYes'],
    before: remeasured,
    act: (own) => saidYes(viewOf(own), viewOf(own).rounds[1]!, notMade),
  },
  'a figure corrected, as a cause was said yes to': {
    of: ['app/state/cause.ts#saidYes'],
    before: remeasured,
    act: (own) => saidYes(viewOf(own), viewOf(own).rounds[1]!, wrongSign),
  },
  'an adjuster that was fitted otherwise, as a cause was said yes to': {
    of: ['app/state/cause.ts#saidYes'],
    before: remeasured,
    act: (own) => saidYes(viewOf(own), viewOf(own).rounds[1]!, reversedOf(own)),
  },
  'a yes taken back': {
    of: ['app/state/cause.ts#takeBackYes'],
    before(own) {
      remeasured(own);
      saidYes(viewOf(own), viewOf(own).rounds[1]!, notMade);
    },
    act: (own) => takeBackYes(viewOf(own), correctedIn(viewOf(own), viewOf(own).rounds)!),
  },
  'a re-measure before all is made': {
    of: ['app/state/measure-now.ts#measureNow'],
    before: measured,
    act: (own) => measureNow(viewOf(own)),
  },
  'a move made': {
    of: [`${SCREENS}visit/moves-dock.tsx#mark`, `${SCREENS}visit/between.tsx#watched`],
    before: measured,
    act: (own) => void made(own),
  },
  'a note on a move': {
    of: ['app/state/move-note.ts#setNote'],
    before: (own) => {
      measured(own);
      made(own);
    },
    act: (own) => setNote(viewOf(own), viewOf(own).rounds[0]!.moves, 'Was seized'),
  },
  'a move taken back': {
    of: [`${SCREENS}visit/made.tsx#takeBack`],
    before: (own) => {
      measured(own);
      made(own);
      typed(own);
    },
    act(own) {
      dropDraft(entryDraft(own.visitId));
      const [move] = viewOf(own).rounds[0]!.moves as [MoveRecord];
      const record = { ...move, at: now(), to: move.from, replaces: move.id };
      keep(['moves', { ...record, id: moveId(records.value.moves, record) }]);
    },
  },
  'a move left': {
    of: ['app/state/leave.ts#leave'],
    before: measured,
    act: (own) => leave(viewOf(own), viewOf(own).rounds[0]!, [REF]),
  },
  'a move taken up again': {
    of: ['app/state/leave.ts#takeUp'],
    before: (own) => {
      measured(own);
      leave(viewOf(own), viewOf(own).rounds[0]!, [REF]);
    },
    act: (own) => takeUp(viewOf(own), viewOf(own).rounds[0]!, [REF]),
  },
  'a choice or a tick': {
    of: [
      'app/state/stage.ts#choose',
      ...[
        'left.tsx#SignOffBody',
        'strip.tsx#WaysOut',
        'strip.tsx#Dock',
        'live-move.tsx#Torque',
        'torque-step.tsx#tick',
        'moves-step.tsx#NothingDock',
        'compare-step.tsx#CompareStep',
      ].map((name) => `${SCREENS}visit/${name}`),
    ],
    act: ({ visitId }) => choose(visitId, { 'left:torque': 'yes' }),
  },
  'where a move by the rack ended, and what else it reads': {
    of: ['setStand', 'typeShown', 'clearShown', 'putTurned'].map((name) => `app/state/by-rack.ts#${name}`),
    before: measured,
    act(own) {
      const view = viewOf(own);
      const [round] = view.rounds as [RoundView];
      const after = { LF: { camber: -0.6, toe: 0.1 } };
      const move = {
        ...{ corner: 'LF', adjuster: 'tie-rod', from: 0, to: 0.4, instruction: '', expectAfter: after },
        ...{ setBy: { angle: 'toe', value: 0.1 }, watched: { from: 0.3, within: 0.1, deviation: { camber: 0.05 } } },
        act: { act: 'turn-rod', turns: 0.4, mm: 0.6 },
      } as Move;
      byRack.setStand({ view, round, move }, 0.5);
      byRack.typeShown({ view, round, move }, 'camber', '1');
      byRack.clearShown({ view, round, move }, 'camber');
      byRack.putTurned({ view, round, move }, { at: 0.45, shown: { camber: -0.62 } });
    },
  },
  'another plan': {
    of: ['app/state/planning.ts#choosePlan'],
    act: ({ visitId }) => choosePlan(visitId, { style: 'surest' }),
  },
  'a check before measuring': {
    of: [`${SCREENS}visit/checks.tsx#ChecksBody`],
    act: (own) => void keep(['visits', marked(viewOf(own).visit, { checks: { pressure: 'ok' } }, now())]),
  },
  'an odometer and a technician': {
    of: ['setOdometer', 'setTechnicianOf', 'noteLook'].map((name) => `app/state/visit-notes.ts#${name}`),
    act(own) {
      setOdometer(viewOf(own).visit, '84 210');
      setTechnicianOf(viewOf(own).visit, 'A. Ostler');
      noteLook(viewOf(own).visit, 'LF: look at the lower arm.');
    },
  },
  'signed off': {
    of: ['app/state/sign-off.ts#signOff'],
    before: (own) => {
      measured(own);
      choose(own.visitId, { 'left:torque': 'yes' });
    },
    act: (own) => signOff(viewOf(own)),
  },
  'opened again': {
    of: ['app/state/sign-off.ts#openAgain'],
    before: (own) => {
      measured(own);
      signOff(viewOf(own));
    },
    act: (own) => openAgain(viewOf(own)),
  },
  'a visit left as it stands': {
    of: ['app/state/sign-off.ts#leaveAsItStands'],
    before: measured,
    act: (own) => leaveAsItStands(viewOf(own), ['torque:x']),
  },
  'a visit left as it stands, undone': {
    of: ['app/state/sign-off.ts#standsOpen'],
    before: (own) => {
      measured(own);
      leaveAsItStands(viewOf(own), []);
    },
    act: (own) => standsOpen(viewOf(own).visit),
  },
  'a visit deleted': {
    of: [`${DELETING}deleteVisit`],
    before: measured,
    act: (own) => deleteVisit({ id: own.visitId }),
  },
  'a visit brought back': {
    of: [`${DELETING}bringBackVisit`],
    before: (own) => deleteVisit({ id: own.visitId }),
    act: (own) => bringBackVisit({ id: own.visitId }),
  },
  'a car deleted': { of: [`${DELETING}deleteCar`], before: measured, act: (own) => deleteCar({ id: own.carId }) },
  'a car brought back': {
    of: [`${DELETING}bringBackCar`],
    before: (own) => deleteCar({ id: own.carId }),
    act: (own) => bringBackCar({ id: own.carId }),
  },
  'another name begun': { of: [`${RENAMING}beginRename`], act: (own) => beginRename(carOf(own)) },
  'another name typed': {
    of: [`${RENAMING}typeName`],
    before: (own) => beginRename(carOf(own)),
    act: (own) => typeName(own.carId, { label: 'Other', plate: 'OTH 3R' }),
  },
  'another name left': {
    of: [`${RENAMING}leaveName`],
    before: (own) => beginRename(carOf(own)),
    act: (own) => leaveName(own.carId),
  },
  'a car renamed': {
    of: [`${RENAMING}rename`],
    before: (own) => {
      keepDraft(`car:${own.carId}`, { 'car.label': 'Half changed', 'car.notes': 'kept' }, undefined);
      typeName(own.carId, { label: 'Other', plate: '' });
    },
    act: (own) => rename(own.carId),
  },
  'a draft thrown away': {
    of: [
      'app/state/records.ts#dropDraft',
      `${SCREENS}build/build.tsx#CardScreen`,
      `${SCREENS}build/build.tsx#discard`,
      `${SCREENS}settings/gauge.tsx#Repeats`,
      `${SCREENS}build/start.tsx#discarded`,
    ],
    before: typed,
    act: (own) => dropDraft(entryDraft(own.visitId)),
  },
  'the drafts of a visit thrown away': {
    of: ['app/state/stage.ts#dropVisitDrafts'],
    before: (own) => {
      typed(own);
      keepDraft(visitDraft(own.visitId), { signOff: 'x' }, undefined);
    },
    act: (own) => dropVisitDrafts(own.visitId),
  },
  'a car saved': {
    of: [`${SCREENS}build/save.ts#saved`],
    before: ({ carId }) => keepDraft(`car:${carId}`, { 'car.label': 'Other' }, undefined),
    act(own) {
      const { id, car, spec } = carOf(own);
      keep(['cars', edited(carOf(own), { id, car: { ...car, label: 'Other' }, spec }, now())]);
      dropDraft(`car:${id}`);
    },
  },
  'one of two builds chosen': {
    of: [`${SCREENS}car/other-build.tsx#OtherBuild`],
    before: (own) => void keep(['cars', twofold(own)]),
    act: (own) => void keep(['cars', chosen(carOf(own), carOf(own), now())]),
  },
  'a car file taken in': {
    of: [`${SCREENS}build/import.tsx#bringIn`],
    act() {
      const own = { carId: newId(), visitId: newId() };
      const record = { ...car, id: own.carId, car: { ...car.car, id: own.carId } };
      const one = { ...reading, id: newId(), visitId: own.visitId };
      const move = { ...(frozenRecords.moves[0] as MoveRecord), id: newId(), visitId: own.visitId, readingId: one.id };
      const opened = { id: own.visitId, carId: own.carId, opened: now() };
      keep(['cars', record], ['visits', opened], ['readings', one], ['moves', move]);
    },
  },
  'the practice car': {
    of: ['app/practice/install.ts#installPracticeCar'],
    act() {
      installPracticeCar();
      // The same one each time: so that there is something to write.
      keep(['preferences', { id: newId(), value: 1 }]);
    },
  },
  'a setting': {
    of: ['Units', 'Rack', 'Live', 'Gauge', 'Drawer', 'Theme', 'TotalToe', 'ToeReference', 'Shop', 'Technician'].map(
      (n) => `${SETTINGS}set${n}`,
    ),
    act({ carId }) {
      preferences.setUnits({ sai: true });
      preferences.setRack({ order: 'wheel' });
      preferences.setLive(['toe']);
      preferences.setGauge({ camber: 0.05, caster: 0.1, toe: 0.02 });
      preferences.setDrawer({ counted: true });
      preferences.setTheme('dark');
      preferences.setTotalToe(carId, true);
      preferences.setToeReference('thrust-line');
      preferences.setShop('Bench and Marl');
      preferences.setTechnician('A. Ostler');
    },
  },
};
