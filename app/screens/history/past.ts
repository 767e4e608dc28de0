/** What each visit of a car found and left, its front toe all from one line. */

import type { AxleName, Car, Corner, Spec, Window } from '../../../core/contract.ts';
import { axleOf, isAxle } from '../../../core/corners.ts';
import { type AxleAngles, angleOf } from '../../../core/reading/axle-angles.ts';
import { angleAgainst, readAgainst, referenceOf, type ToeReference } from '../../../core/reading/toe-reference.ts';
import type { CarRecord, ReadingRecord, VisitRecord } from '../../../core/records/stored.ts';
import { canTotal, type Field, fieldsOf, fieldWord } from '../../state/fields.ts';
import { formOfRecord } from '../../state/form.ts';
import { placeWord, windowOf } from '../../state/judge.ts';
import type { Records } from '../../state/records.ts';
import { leftRecord, visitsOf, visitView } from '../../state/visits.ts';

/** What a line is of: an angle that was read, or one that two wheels make of theirs. */
export interface Line {
  /** `LF.camber`, `rear.thrustAngle` */
  readonly id: string;
  readonly where: Corner | AxleName;
  readonly angle: Field['angle'] | keyof AxleAngles | 'crossHeight';
  readonly name: string;
  readonly window: Window | undefined;
}
type Place = Pick<Line, 'where' | 'angle'>;

export interface Past {
  readonly visit: VisitRecord;
  readonly day: string;
  /** Degrees; a wheel's half of a total is no figure of its own, nor is where an axle points that was taken as one. */
  readonly found: (line: Place) => number | undefined;
  readonly left: (line: Place) => number | undefined;
}

export interface History {
  /** Oldest first, visits with a reading only. */
  readonly past: readonly Past[];
  /** What was measured in any of them, the front's first, what both wheels make after the wheels. */
  readonly lines: readonly Line[];
  /** What all front toe is shown against; and of how many readings it is left out, as they have no rear toe to tell by. */
  readonly reference: ToeReference;
  readonly leftOut: number;
}

export function pastOf(all: Records, { id, car, spec }: CarRecord): History {
  const views = [...visitsOf(all, id)].reverse().flatMap((visit) => visitView(all, visit.id) ?? []);
  const visits = views.filter(({ rounds }) => rounds.length > 0);
  const shown = visits.flatMap((view) => [view.rounds[0]?.record, leftRecord(view)].filter((one) => one !== undefined));
  const reference = commonLine(shown);
  const measured =
    (record: ReadingRecord | undefined) =>
    ({ where, angle }: Place): number | undefined => {
      if (!record) return undefined;
      const axle = isAxle(where) ? where : axleOf(where);
      const isHalf = angle === 'toe' || angle === 'thrustAngle';
      if (isHalf && formOfRecord(record).total && canTotal(car, axle)) return undefined;
      return angleAgainst(record.reading, where, angle, reference);
    };
  const past = visits.map((view) => ({
    visit: view.visit,
    day: view.visit.opened,
    found: measured(view.rounds[0]?.record),
    left: measured(leftRecord(view)),
  }));
  const fields = [false, true].flatMap((total) =>
    fieldsOf(car, { sai: true, total, axle: true, wheel: true, heights: true }),
  );
  const lines = (['front', 'rear'] as const).flatMap((axle) => linesOf(axle, fields, spec, car));
  const taken = lines.filter((line) => past.some(({ found, left }) => (found(line) ?? left(line)) !== undefined));
  const leftOut = new Set(shown.filter(({ reading }) => !readAgainst(reading, reference))).size;
  return { past, lines: taken, reference, leftOut };
}

const OF_BOTH = ['totalToe', 'crossCamber', 'crossHeight', 'crossCaster', 'thrustAngle'] as const;

/** Each once: what is typed of an axle's wheels and of the axle, then what both wheels make. */
function linesOf(axle: AxleName, all: readonly Field[], spec: Spec, car: Car): readonly Line[] {
  const fields = all.filter(({ where }) => where === axle || (!isAxle(where) && axleOf(where) === axle));
  const read = fields.map((field) => ({ ...field, name: fieldWord(field), window: windowOf(spec, field) }));
  const made = OF_BOTH.map((angle) => ({
    ...{ id: `${axle}.${angle}`, where: axle, angle, name: placeWord(car, axle, angle) },
    window: windowOfBoth(spec, axle, angle),
  }));
  const lines: readonly Line[] = [...read, ...made];
  return lines.filter(({ id }, i) => lines.findIndex((one) => one.id === id) === i);
}

function windowOfBoth(spec: Spec, axle: AxleName, angle: (typeof OF_BOTH)[number]): Window | undefined {
  if (angle === 'crossHeight') return undefined;
  return angle === 'totalToe' ? windowOf(spec, { where: axle, angle }) : spec[axle]?.[angle];
}

/** The newest reading's own, of those that can be told against either. */
function commonLine(records: readonly ReadingRecord[]): ToeReference {
  const both = records.filter(({ reading }) => angleOf(reading, 'rear', 'thrustAngle') !== undefined);
  return referenceOf(both.at(-1)?.reading ?? {});
}
