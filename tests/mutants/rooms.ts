/** The rooms of core, each with the quick tests that know it: what a mutant is run against. */

export interface Room {
  /** Folders and files whose code is mutated; `*.ts`: a folder without what is in its own. */
  readonly sources: readonly string[];
  /** Globs of the tests that must notice, without their ends. Slow ones are left out where others know as much. */
  readonly tests: readonly string[];
}

export const ROOMS: Readonly<Record<string, Room>> = {
  units: {
    sources: ['core/units'],
    tests: ['tests/core/units/*', 'tests/nonsense/{limits,units}*'],
  },
  reading: {
    sources: ['core/reading'],
    tests: [
      'tests/core/reading/*',
      'tests/nonsense/{limits,units}*',
      'tests/reference/{frame-angle,steering-sweep,sweep-and-toe}*',
    ],
  },
  records: {
    sources: ['core/records'],
    tests: ['tests/core/records/*', 'tests/nonsense/{car-file,plan-request}*'],
  },
  check: {
    sources: ['core/check', 'core/input-error.ts'],
    tests: [
      'tests/core/check/*',
      'tests/core/records/{car-file,stores}',
      'tests/nonsense/{car-file,limits,plan-request}',
    ],
  },
  adjuster: {
    sources: ['core/adjuster'],
    tests: [
      'tests/core/{adjuster,words}/*',
      'tests/nonsense/car-file',
      'tests/reference/{cam-scales,rear-cams,sleeve-and-wedge,strut-top,tie-rod,upper-arm-shims}',
    ],
  },
  pose: {
    sources: ['core/pose', 'core/geometry'],
    tests: [
      'tests/core/{pose,suspension}/*',
      'tests/property/kinematics*',
      'tests/reference/{axle-on-links,double-wishbone-motion,rear-cams,sleeve-and-wedge,strut-top,tie-rod}*',
    ],
  },
  suspension: {
    sources: ['core/suspension'],
    tests: ['tests/core/suspension/*', 'tests/nonsense/tape*'],
  },
  starters: {
    sources: ['core/starters'],
    tests: ['tests/core/starters/*'],
  },
  ask: {
    sources: ['core/ask', 'core/corners.ts'],
    tests: ['tests/core/{ask,records}/*', 'tests/nonsense/*', 'tests/property/{as-measured,chart-only}*'],
  },
  // The plan by its parts: each is tried against what knows that part, so that no change waits for all.
  plan: {
    sources: ['core/plan/*.ts', 'core/plan/answer'],
    tests: [
      'tests/core/plan/*',
      'tests/core/plan/answer/*',
      'tests/core/records/plan-request',
      'tests/property/{as-measured,chart-only,plan-whole-car,working-order}',
      'tests/reference/limits',
    ],
  },
  'plan/chance': {
    sources: ['core/plan/chance'],
    tests: ['tests/core/plan/chance/*', 'tests/property/{chance,every-kind,normal}'],
  },
  'plan/extension': {
    sources: ['core/plan/extension'],
    tests: ['tests/core/plan/extension/*', 'tests/nonsense/free', 'tests/property/free'],
  },
  'plan/reach': {
    sources: ['core/plan/reach'],
    tests: ['tests/core/plan/reach/*', 'tests/nonsense/reach', 'tests/property/reach'],
  },
  'plan/search': {
    sources: ['core/plan/search'],
    tests: ['tests/core/plan/search/*', 'tests/property/plan-whole-car', 'tests/reference/{highs,limits}'],
  },
  'plan/shims': {
    sources: ['core/plan/shims'],
    tests: ['tests/core/plan/shims/*', 'tests/property/drawer'],
  },
  'plan/states': {
    sources: ['core/plan/states'],
    tests: ['tests/core/plan/states/*', 'tests/property/{every-kind,states}', 'tests/reference/highs'],
  },
};
