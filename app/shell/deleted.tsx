/** In the place of a car or a visit that was deleted: that it was, and the way back. */
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { ActionBar } from '../parts/action-bar.tsx';
import { go } from '../routes.ts';
import { shortDay } from '../state/days.ts';
import { atOf, bringBackCar, bringBackVisit, type Gone } from '../state/deleting.ts';
import { Header } from './header.tsx';

interface Props {
  readonly car: CarRecord;
  readonly visit?: VisitRecord;
}

/** `Visit of 3 Nov`, `Marl estate` */
export const nameOf = ({ car, visit }: Pick<Gone, 'car' | 'visit'>): string =>
  visit ? `Visit of ${shortDay(visit.opened)}` : car.car.label;

export const bringBack = ({ car, visit }: Pick<Gone, 'car' | 'visit'>): void =>
  visit ? bringBackVisit(visit) : bringBackCar(car);

export function Deleted({ car, visit }: Props) {
  const what = { car, ...(visit && { visit }) };
  return (
    <div class="screen">
      <Header title={car.car.label} plate={car.car.plate} back={{ screen: 'cars' }} />
      <main class="list">
        <p>
          {visit ? nameOf(what) : 'This car'} was deleted {shortDay(atOf(visit ?? car))}. It is still on file: brought
          back, it is as it was.
        </p>
      </main>
      <ActionBar
        primary={{ label: visit ? 'Bring the visit back' : 'Bring the car back', onPress: () => bringBack(what) }}
        secondary={[{ label: 'To the cars', onPress: () => go({ screen: 'cars' }) }]}
      />
    </div>
  );
}
