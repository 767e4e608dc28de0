/** First load. Every car on this phone: the one on the rack first, with its next step; the newest state of each. */
import { signal } from '@preact/signals';
import type { CarRecord } from '../../core/records/stored.ts';
import { ActionBar } from '../parts/action-bar.tsx';
import { Card } from '../parts/card.tsx';
import { LongList } from '../parts/long-list.tsx';
import { Plate } from '../parts/plate.tsx';
import { Verdict } from '../parts/verdict.tsx';
import { go, hashOf } from '../routes.ts';
import { Boundary } from '../shell/boundary.tsx';
import { Header } from '../shell/header.tsx';
import { Lazy } from '../shell/lazy.tsx';
import { UndoBar } from '../shell/undo-bar.tsx';
import { carsInOrder, found, readNames } from '../state/car-list.ts';
import { carState } from '../state/car-state.ts';
import { openSince } from '../state/forgotten.ts';
import { loading, records } from '../state/records.ts';
import { stageOf } from '../state/stage.ts';
import { openVisit, visitView } from '../state/visits.ts';
import { newId } from '../store/index.ts';

const wanted = signal('');
const loadLeaveOpen = async () => (await import('../shell/leave-open.tsx')).LeaveOpen;
const loadNextMove = async () => (await import('../shell/next-move.tsx')).NextMove;

export function CarsScreen() {
  const isAll = loading.value === 'ready';
  const cars = found(carsInOrder(records.value), wanted.value);
  return (
    <div class="screen">
      <Header title="Cornerwright" />
      <main class="list" aria-busy={!isAll}>
        <input
          type="search"
          aria-label="Find a car or plate"
          placeholder="Find a car or plate"
          value={wanted.value}
          onFocus={() => readNames(carsInOrder(records.value))}
          onInput={(event) => {
            wanted.value = event.currentTarget.value;
          }}
        />
        <LongList
          of={cars}
          subject={wanted.value}
          row={(car) => (
            <Boundary key={car.id} part="A car">
              <CarRow car={car} />
            </Boundary>
          )}
        />
        {cars.length === 0 && wanted.value && (
          <p class="soft empty">{isAll ? `No car with “${wanted.value}” here.` : 'The cars are still being read.'}</p>
        )}
      </main>
      <ActionBar
        note={<UndoBar />}
        primary={{ label: 'New car', onPress: () => go({ screen: 'build', id: newId() }) }}
        secondary={[
          { label: 'Bench', onPress: () => go({ screen: 'bench', tool: '', visit: '' }) },
          { label: 'Settings', onPress: () => go({ screen: 'settings' }) },
          { label: 'Cautions', onPress: () => go({ screen: 'cautions' }) },
        ]}
      />
    </div>
  );
}

function CarRow({ car }: { readonly car: CarRecord }) {
  const visit = openVisit(records.value, car.id);
  const view = visit && visitView(records.value, visit.id);
  const { text, verdict } = carState(records.value, car);
  const since = visit && openSince(records.value, visit);
  const card = (
    <Card
      href={hashOf(visit ? { screen: 'visit', id: visit.id } : { screen: 'car', id: car.id })}
      title={car.car.label}
      tone={visit ? 'live' : 'plain'}
      {...(car.car.plate ? { aside: <Plate text={car.car.plate} /> } : {})}
    >
      <span class="soft">
        {visit && (since ? `Open since ${since}. ` : 'On the rack. ')}
        {view && stageOf(view) === 'moves' ? (
          <Lazy load={loadNextMove} props={{ view }} waiting={text} quiet />
        ) : verdict ? (
          <Verdict state={verdict} label={text} />
        ) : (
          text
        )}
      </span>
    </Card>
  );
  if (!since || !view) return card;
  return (
    <div class="row">
      {card}
      <Lazy load={loadLeaveOpen} props={{ view }} quiet />
    </div>
  );
}
