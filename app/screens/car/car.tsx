/** One car: its open visit or a new one, its past visits, its build, its name and its history. */

import type { Adjuster, Axle } from '../../../core/contract.ts';
import { toCarFile } from '../../../core/records/exchange.ts';
import type { CarRecord } from '../../../core/records/stored.ts';
import { otherVersions } from '../../../core/records/versions.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Card } from '../../parts/card.tsx';
import { LongList } from '../../parts/long-list.tsx';
import { Verdict } from '../../parts/verdict.tsx';
import { go, route } from '../../routes.ts';
import { Deleted } from '../../shell/deleted.tsx';
import { Header } from '../../shell/header.tsx';
import { Lazy } from '../../shell/lazy.tsx';
import { fileName, saveFile } from '../../shell/save-file.ts';
import { UndoBar } from '../../shell/undo-bar.tsx';
import { WorkedOn } from '../../shell/worked-on.tsx';
import { carState } from '../../state/car-state.ts';
import { isGone } from '../../state/gone.ts';
import { records } from '../../state/records.ts';
import { beginVisit } from '../../state/visit-actions.ts';
import { ownRecords, visitsOf } from '../../state/visits.ts';
import { byId } from '../../store/index.ts';
import { CarFacts } from './facts.tsx';
import { OtherBuild } from './other-build.tsx';
import { OpenVisit, PastVisit } from './visit-cards.tsx';

const loadLearned = async () => (await import('./learned.tsx')).LearnedCard;

export function CarScreen() {
  const all = records.value;
  const id = route.value.screen === 'car' ? route.value.id : '';
  const car = byId(all.cars, id);
  if (!car) {
    return (
      <div class="screen">
        <Header title="No such car" back={{ screen: 'cars' }} />
        <main class="list">
          <p>This car is not on this phone.</p>
        </main>
        <ActionBar primary={{ label: 'To the cars', onPress: () => go({ screen: 'cars' }) }} />
      </div>
    );
  }
  if (isGone(all, car)) return <Deleted car={car} />;
  const visits = visitsOf(all, id);
  const [open, ...others] = visits.filter(({ closed }) => !closed);
  const { text, verdict } = carState(all, car);
  const past = visits.filter(({ closed }) => closed);
  return (
    <div class="screen">
      <Header title={car.car.label} plate={car.car.plate} back={{ screen: 'cars' }} />
      <main class="list">
        <WorkedOn record={car} />
        {open ? (
          <OpenVisit car={car} visit={open} first />
        ) : (
          <Card title="Now">{verdict ? <Verdict state={verdict} label={text} /> : text}</Card>
        )}
        {others.map((visit) => (
          <OpenVisit key={visit.id} car={car} visit={visit} first={false} />
        ))}
        {otherVersions(car).map((other) => (
          <OtherBuild key={other.changed} car={car} other={other} />
        ))}
        <Card title="Build">
          <dl class="facts">
            {(['front', 'rear'] as const).map((axle) => (
              <div key={axle}>
                <dt>{axle === 'front' ? 'Front' : 'Rear'}</dt>
                <dd>
                  {suspensionKinds[car.car[axle].suspension.kind]?.name}
                  <span class="soft"> {fittedText(car.car[axle])}</span>
                </dd>
              </div>
            ))}
          </dl>
          {car.car.notes && <p class="soft">{car.car.notes}</p>}
          <div class="pair">
            <button type="button" class="quiet" onClick={() => go({ screen: 'height', id })}>
              Ride height
            </button>
            <button type="button" class="quiet" onClick={() => go({ screen: 'chart', id })}>
              Its chart
            </button>
          </div>
          <button type="button" class="quiet wide" onClick={() => saveCarFile(car)}>
            Car file
          </button>
        </Card>
        <CarFacts car={car} />
        <Lazy load={loadLearned} props={{ record: car }} quiet />
        <LongList of={past} subject={id} row={(visit) => <PastVisit key={visit.id} car={car} visit={visit} />} />
      </main>
      <ActionBar
        note={<UndoBar />}
        primary={{
          label: open ? 'Go on with the visit' : 'New visit',
          onPress: async () => go({ screen: 'visit', id: (await beginVisit(car)).id }),
        }}
        secondary={[
          { label: 'History', onPress: () => go({ screen: 'history', id }) },
          { label: 'Build', onPress: () => go({ screen: 'build', id }) },
        ]}
      />
    </div>
  );
}

const namesOf = (adjusters: readonly Adjuster[]): string => adjusters.map(({ name }) => name).join('; ') || 'none';

/** What is fitted, a side each where they differ. */
function fittedText({ adjusters, rightAdjusters }: Axle): string {
  if (rightAdjusters) return `Left: ${namesOf(adjusters)}. Right: ${namesOf(rightAdjusters)}.`;
  return adjusters.length > 0 ? namesOf(adjusters) : 'no adjusters';
}

/** The car with its visits as a file: for another phone or the terminal. */
function saveCarFile(car: CarRecord): void {
  const { visits, readings, moves } = ownRecords(records.value, car.id);
  const text = `${JSON.stringify(toCarFile(car, visits, readings, moves), null, 2)}\n`;
  saveFile(text, fileName(car.car.label, 'json'), 'application/json');
}
