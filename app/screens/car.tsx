/** One car: its open visit or a new one, its past visits, its build and its history. */

import type { Adjuster, Axle } from '../../core/contract.ts';
import { toCarFile } from '../../core/records/exchange.ts';
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { chosen, otherVersions } from '../../core/records/versions.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import { ActionBar } from '../parts/action-bar.tsx';
import { Card } from '../parts/card.tsx';
import { LongList } from '../parts/long-list.tsx';
import { Verdict } from '../parts/verdict.tsx';
import { go, hashOf, route } from '../routes.ts';
import { Header } from '../shell/header.tsx';
import { buildName, differences } from '../state/builds.ts';
import { carState } from '../state/car-state.ts';
import { shortDay } from '../state/days.ts';
import { judged } from '../state/judge.ts';
import { keep, records } from '../state/records.ts';
import { beginVisit } from '../state/visit-actions.ts';
import { leftReading, openVisit, ownRecords, visitsOf, visitView } from '../state/visits.ts';
import { byId, now } from '../store/index.ts';

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
  const open = openVisit(all, id);
  const { text, verdict } = carState(all, car);
  const past = visitsOf(all, id).filter(({ closed }) => closed);
  return (
    <div class="screen">
      <Header title={car.car.label} plate={car.car.plate} back={{ screen: 'cars' }} />
      <main class="list">
        <Card title={open ? 'On the rack' : 'Now'} tone={open ? 'live' : 'plain'}>
          {verdict ? <Verdict state={verdict} label={text} /> : text}
        </Card>
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
        <LongList of={past} subject={id} row={(visit) => <PastVisit key={visit.id} car={car} visit={visit} />} />
      </main>
      <ActionBar
        primary={{
          label: open ? 'Go on with the visit' : 'New visit',
          onPress: () => go({ screen: 'visit', id: beginVisit(car).id }),
        }}
        secondary={[
          { label: 'History', onPress: () => go({ screen: 'history', id }) },
          { label: 'Build', onPress: () => go({ screen: 'build', id }) },
        ]}
      />
    </div>
  );
}

/** The car was edited on another phone too. Both builds are kept; which one is planned with is for a person to say. */
function OtherBuild({ car, other }: { readonly car: CarRecord; readonly other: CarRecord }) {
  const take = (version: CarRecord) => keep(['cars', chosen(car, version, now())]);
  return (
    <Card title="Edited on another phone too" tone="caution">
      <dl class="facts">
        <div>
          <dt>In use</dt>
          <dd>{buildName(car)}</dd>
        </div>
        <div>
          <dt>Other</dt>
          <dd>{buildName(other)}</dd>
        </div>
        <div>
          <dt>Differs</dt>
          <dd>{differences(car, other).join(', ')}</dd>
        </div>
      </dl>
      <div class="pair">
        <button type="button" class="quiet" onClick={() => take(other)}>
          Use the other
        </button>
        <button type="button" class="quiet" onClick={() => take(car)}>
          Keep this one
        </button>
      </div>
      <p class="soft after-pair">Neither is lost: Build has both to look at.</p>
    </Card>
  );
}

function PastVisit({ car, visit }: { readonly car: CarRecord; readonly visit: VisitRecord }) {
  const view = visitView(records.value, visit.id);
  const left = view && leftReading(view);
  return (
    <Card title={`Visit of ${shortDay(visit.opened)}`} href={hashOf({ screen: 'visit', id: visit.id })}>
      {left ? (
        <Verdict state={judged(left, car.spec).verdict} label="as left" />
      ) : (
        <span class="soft">not measured as left</span>
      )}
    </Card>
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
  const name =
    car.car.label
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'car';
  const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  Object.assign(document.createElement('a'), { href: url, download: `${name}.json` }).click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
