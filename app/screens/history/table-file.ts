/** The history as a table for a spreadsheet: a row for what each visit found and left, its figures as bare numbers. */
import type { CarRecord } from '../../../core/records/stored.ts';
import { toeToLength } from '../../../core/units/toe.ts';
import { csvOf } from '../../state/csv.ts';
import { isTape, isToe } from '../../state/fields.ts';
import { shopName, units } from '../../state/preferences.ts';
import { isUnsigned } from '../../state/unsigned.ts';
import { distanceIn, odometerOf, technicianOf } from '../../state/visit-notes.ts';
import type { History, Line, Past } from './past.ts';

const MM_PER_INCH = 25.4;
/** As many decimals as any rack shows, and one. */
const DECIMALS = 4;

interface Column {
  readonly head: string;
  readonly cell: (past: Past, kind: 'found' | 'left') => string;
}

/** Of the car and its visits only what is on file has a column. */
export function historyTable({ past, lines }: History, { car }: CarRecord): string {
  const { decimal } = units.value;
  const columns: readonly Column[] = [
    { head: 'Visit', cell: ({ day }) => day.slice(0, 10) },
    { head: 'Reading', cell: (_, kind) => `as ${kind}` },
    { head: 'Signed off', cell: ({ visit }) => (!visit.closed || isUnsigned(visit) ? 'no' : 'yes') },
    ...ofTheVisit(car).filter(({ cell }) => past.some((one) => cell(one, 'found') !== '')),
    ...lines.map((line) => ({
      head: `${line.name}, ${unitOf(line, car.wheel.rimDiameter)}`,
      cell: (one: Past, kind: 'found' | 'left') => bare(one[kind](line), line, car.wheel.rimDiameter),
    })),
  ];
  const rows = past.flatMap((one) =>
    (['found', 'left'] as const)
      .filter((kind) => lines.some((line) => one[kind](line) !== undefined))
      .map((kind) => columns.map(({ cell }) => cell(one, kind))),
  );
  return csvOf([columns.map(({ head }) => head), ...rows], decimal === ',' ? ';' : ',');
}

const ofTheVisit = ({
  label,
  plate = '',
  customer = '',
  vin = '',
  tyres = '',
}: CarRecord['car']): readonly Column[] => [
  { head: 'Shop', cell: () => shopName.value },
  { head: 'Technician', cell: ({ visit }) => technicianOf(visit) },
  { head: 'Car', cell: () => label },
  { head: 'Plate', cell: () => plate },
  { head: 'Customer', cell: () => customer },
  { head: 'VIN', cell: () => vin },
  { head: 'Tyres', cell: () => tyres },
  { head: 'Odometer', cell: ({ visit }) => String(distanceIn(odometerOf(visit).text) ?? odometerOf(visit).text) },
  { head: 'Odometer in', cell: ({ visit }) => (odometerOf(visit).text ? odometerOf(visit).unit : '') },
];

/** Which unit a line's numbers are in, and what is + where shops differ. */
function unitOf({ angle }: Line, rimDiameter: number | undefined): string {
  const { length, toe, thrust } = units.value;
  if (isLength(angle)) return length;
  if (angle === 'thrustAngle') return `degrees, ${thrust === 'right-plus' ? '+' : '-'} to the right`;
  return isToe(angle as never) && toe !== 'angle' && rimDiameter !== undefined ? `${toe} at the rim` : 'degrees';
}

const isLength = (angle: Line['angle']): boolean => angle === 'crossHeight' || isTape(angle as never);

function bare(value: number | undefined, { angle }: Line, rimDiameter: number | undefined): string {
  if (value === undefined) return '';
  const { length, toe, thrust } = units.value;
  const inches = (mm: number, unit: 'mm' | 'inch'): number => (unit === 'inch' ? mm / MM_PER_INCH : mm);
  if (isLength(angle)) return number(inches(value, length));
  if (angle === 'thrustAngle') return number(thrust === 'right-plus' ? value : -value);
  if (!isToe(angle as never) || toe === 'angle' || rimDiameter === undefined) return number(value);
  // Lengths of both wheels add up; the sine of the sum of their angles does not.
  const wheels = angle === 'totalToe' ? 2 : 1;
  return number(inches(toeToLength(value / wheels, rimDiameter) * wheels, toe));
}

/** No longer than it need be, with a minus that spreadsheets know. */
const number = (value: number): string =>
  String(Number(value.toFixed(DECIMALS)) || 0).replace('.', units.value.decimal);
