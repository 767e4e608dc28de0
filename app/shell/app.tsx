/** First load. Chooses the screen; the list of cars is in the first load, the rest come when asked for, the visit soon. */
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { acceptUpdate, updateWaiting } from '../offline/registration.ts';
import { hashOf, type Route, route } from '../routes.ts';
import { CarsScreen } from '../screens/cars.tsx';
import { cleared, loadError, loading, loadSoon, records } from '../state/records.ts';
import { byId, store } from '../store/index.ts';
import { Boundary } from './boundary.tsx';
import { Lazy } from './lazy.tsx';
import { LossNote } from './loss-note.tsx';

const loadVisit = async () => (await import('../screens/visit/visit.tsx')).VisitScreen;

const LATER: Partial<Record<Route['screen'], () => Promise<ComponentType>>> = {
  visit: loadVisit,
  car: async () => (await import('../screens/car/car.tsx')).CarScreen,
  build: async () => (await import('../screens/build/build.tsx')).BuildScreen,
  history: async () => (await import('../screens/history/history.tsx')).HistoryScreen,
  height: async () => (await import('../screens/height/height.tsx')).HeightScreen,
  chart: async () => (await import('../screens/chart/chart.tsx')).ChartScreen,
  bench: async () => (await import('../screens/bench/bench.tsx')).BenchScreen,
  settings: async () => (await import('../screens/settings/settings.tsx')).SettingsScreen,
  cautions: async () => (await import('../screens/cautions.tsx')).CautionsScreen,
};

/** The visit is what is asked for next: it is fetched before it is. */
export const fetchSoon = (): void => void loadVisit().catch(() => undefined);
const loadRescue = async () => (await import('./rescue.tsx')).Rescue;

export function App() {
  if (loading.value === 'loading') return <p class="wait" aria-busy="true" />;
  if (loading.value === 'failed' && cleared.value) return <Lazy load={loadRescue} props={{}} />;
  if (loading.value === 'failed') return <NotOpened message={loadError.value} />;
  return (
    <>
      <UpdateNote />
      <NotSavedNote />
      <LossNote />
      <RestoreNotes />
      <Boundary key={hashOf(route.value)}>
        <Screen />
      </Boundary>
    </>
  );
}

function Screen() {
  const { screen } = route.value;
  if (loading.value === 'some' && !isHere(route.value)) return <Coming key={hashOf(route.value)} />;
  if (screen === 'cars') return <CarsScreen />;
  const load = LATER[screen];
  if (!load) return <CarsScreen />;
  return <Lazy key={screen === 'visit' ? hashOf(route.value) : screen} load={load} props={{}} />;
}

/** Whether all that a screen shows has been read, while the rest is on its way. */
function isHere(to: Route): boolean {
  if (to.screen === 'cars' || to.screen === 'cautions') return true;
  if (to.screen === 'bench') return to.visit === '' || byId(records.value.visits, to.visit) !== undefined;
  if (to.screen === 'visit') return byId(records.value.visits, to.id) !== undefined;
  // The build card knows of the other cars, and settings of everything.
  if (to.screen === 'build' || to.screen === 'settings') return false;
  return byId(records.value.cars, to.id) !== undefined;
}

/** A car that is asked for before all cars are here is read before them. */
function Coming() {
  useEffect(() => {
    const to = route.value;
    const visit = to.screen === 'visit' ? to.id : to.screen === 'bench' ? to.visit : '';
    if (visit) void loadSoon({ cars: [], visits: [visit] }).catch(() => undefined);
    else if ('id' in to) void loadSoon({ cars: [to.id], visits: [] }).catch(() => undefined);
  }, []);
  return <p class="wait" aria-busy="true" />;
}

/** The database did not open: say so and touch nothing. */
function NotOpened({ message }: { readonly message: string }) {
  return (
    <main class="page">
      <h1>Your records could not be opened</h1>
      <p>Cornerwright has changed or deleted nothing. Close other windows of it, then open it again.</p>
      <p class="soft">{message}</p>
      <button type="button" class="primary" onClick={() => location.reload()}>
        Open again
      </button>
    </main>
  );
}

function UpdateNote() {
  if (!updateWaiting.value) return null;
  return (
    <div class="note-bar" role="status">
      <span>A newer version is ready.</span>
      <button
        type="button"
        class="quiet"
        onClick={async () => {
          await store.flush();
          acceptUpdate();
        }}
      >
        Use it now
      </button>
    </div>
  );
}

const restoring = async () => (await import('./restoring.tsx')).Restoring;
const cutOffNote = async () => (await import('./cut-off-note.tsx')).CutOffNote;

function RestoreNotes() {
  if (store.restoring.value) return <Lazy key="restoring" load={restoring} props={{}} quiet />;
  return store.cutOff.value ? <Lazy key="cut-off" load={cutOffNote} props={{}} quiet /> : null;
}

function NotSavedNote() {
  if (store.saveState.value !== 'not-saved') return null;
  return (
    <div class="note-bar note-bad" role="alert">
      <span>Not saved: {store.saveMessage.value || 'the phone refused to write.'} What you see is still here.</span>
      <a class="quiet" href="#/settings">
        Save to a file
      </a>
    </div>
  );
}
