/** A visit as one strip, oldest step on top, the live one last. The first reading is here, the rest follows. */
import { useState } from 'preact/hooks';
import { ActionBar } from '../../parts/action-bar.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { Lazy } from '../../shell/lazy.tsx';
import { isGone } from '../../state/gone.ts';
import { useOneWindow } from '../../state/one-window.ts';
import { records } from '../../state/records.ts';
import { stageOf } from '../../state/stage.ts';
import { entryReady } from '../../state/visit-actions.ts';
import { type VisitView, visitView } from '../../state/visits.ts';
import { OneWindow } from './along.tsx';
import { CheckStep } from './check-step.tsx';
import { EntryDock, EntryGrid } from './entry.tsx';
import { PracticeButton } from './practice-button.tsx';

const loadDeleted = async () => (await import('../../shell/deleted.tsx')).Deleted;
const loadFoot = async () => (await import('./foot.tsx')).VisitFoot;
const loadStrip = async () => (await import('./strip.tsx')).Strip;

export function VisitScreen() {
  const id = route.value.screen === 'visit' ? route.value.id : '';
  const view = visitView(records.value, id);
  useOneWindow(id);
  if (!view) {
    return (
      <div class="screen">
        <Header title="No such visit" back={{ screen: 'cars' }} />
        <Sheet>
          <p class="page">This visit is not on this phone.</p>
        </Sheet>
        <ActionBar primary={{ label: 'To the cars', onPress: () => go({ screen: 'cars' }) }} />
      </div>
    );
  }
  if (isGone(records.value, view.car)) return <Lazy load={loadDeleted} props={{ car: view.car }} />;
  if (isGone(records.value, view.visit))
    return <Lazy load={loadDeleted} props={{ car: view.car, visit: view.visit }} />;
  const { label, plate } = view.car.car;
  return (
    <div class="screen screen-strip">
      <Header title={label} plate={plate} back={{ screen: 'car', id: view.car.id }} />
      <OneWindow>
        {view.rounds.length === 0 && stageOf(view) === 'entry' ? (
          <FirstEntry view={view} />
        ) : (
          <Lazy load={loadStrip} props={{ view }} />
        )}
      </OneWindow>
    </div>
  );
}

function FirstEntry({ view }: { readonly view: VisitView }) {
  // What comes next is fetched while the hands are busy with digits.
  useState(() => void loadStrip().catch(() => undefined));
  return (
    <>
      <Sheet>
        <CheckStep view={view} />
        <PunchedStep state="live" title="As found" note="what the rack shows now">
          <PracticeButton view={view} />
          <EntryGrid view={view} />
          <Lazy load={loadFoot} props={{ view }} quiet />
        </PunchedStep>
      </Sheet>
      <EntryDock view={view} actionLabel="Where the adjusters stand" onReady={() => entryReady(view)} />
    </>
  );
}
