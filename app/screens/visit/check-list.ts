/** What is looked at before measuring. */
import type { VisitRecord } from '../../../core/records/stored.ts';

export const CHECKS = [
  ['pressure', 'Tyre sizes, wear and pressures right, left and right alike'],
  ['joints', 'Ball joints, rod ends, bushes and steering gear without play'],
  ['bearing', 'Wheel bearings without play'],
  ['load', 'Load and fuel as the maker asks'],
  ['level', 'Rack or floor level, car bounced and settled'],
  ['height', 'Ride height within the maker’s limits'],
  ['pins', 'Turn plates free, pins out'],
  ['runout', 'Run-out compensated'],
  ['wheel', 'Steering wheel straight and clamped'],
  ['sweep', 'Brake held for the caster sweep'],
] as const;

export const checksDone = ({ checks }: VisitRecord): number => CHECKS.filter(([id]) => checks?.[id]).length;
