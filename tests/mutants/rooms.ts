/** The rooms of core and the app's store, each with the quick tests that know it: what a mutant is run against. */

export interface Room {
  /** Folders and files whose code is mutated. */
  readonly sources: readonly string[];
  /** Globs of the tests that must notice, without their ends. Slow ones are left out where others know as much. */
  readonly tests: readonly string[];
  /** Whether the tests share one load of the code, which halves the time: none of them leaves anything behind. */
  readonly shared?: true;
}

export const ROOMS: Readonly<Record<string, Room>> = {
  units: {
    sources: ['core/units'],
    tests: ['tests/core/units/*', 'tests/nonsense/{limits,units}*'],
  },
  reading: {
    sources: ['core/reading'],
    tests: ['tests/core/reading/*', 'tests/nonsense/{limits,units}*', 'tests/core/plan/steering-wheel*'],
  },
  measure: {
    sources: ['core/measure'],
    tests: [
      'tests/core/measure/*',
      'tests/nonsense/{limits,units}*',
      'tests/reference/{frame-angle,steering-sweep,sweep-and-toe}*',
    ],
  },
  records: {
    sources: ['core/records'],
    tests: ['tests/core/records/*', 'tests/nonsense/{car-file,plan-request}*'],
    shared: true,
  },
  check: {
    sources: ['core/check', 'core/input-error.ts'],
    tests: [
      'tests/core/check/*',
      'tests/core/records/{car-file,stores}',
      'tests/nonsense/{car-file,limits,plan-request}',
      'tests/core/plan/shims/packs',
      'tests/core/suspension/beam-cross-rod',
    ],
  },
  adjuster: {
    sources: ['core/adjuster'],
    tests: [
      'tests/core/{adjuster,words}/*',
      'tests/nonsense/car-file',
      'tests/core/plan/{preferences,answer/jobs}',
      'tests/core/suspension/beam-cross-rod',
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
    shared: true,
  },
  learn: {
    sources: ['core/learn'],
    tests: ['tests/reference/learn*', 'tests/property/{learn,learn-places,explain}.test*'],
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
  plan: {
    sources: ['core/plan'],
    tests: [
      'tests/core/plan/**/*',
      'tests/core/reading/adjusters-share',
      'tests/nonsense/{reach,too-many-positions}',
      'tests/property/{leave-and-done,normal,plan-fine,states,working-order}',
    ],
    shared: true,
  },
  store: {
    sources: ['app/store'],
    tests: [
      'tests/store/{backup,backup-door,backup-pieces,backup-worker,beside,both-kept,breath,canary,cleared-parts,connection}',
      'tests/store/{copy,cut-off,export,failure,faults,fresh-log,hostile-backup,in-pieces,lists,load-parts,mark-file,merge}',
      'tests/store/{one-window,outside,page-events,persistence,piece-writer,put-back,read-backup,read-many}',
      'tests/store/{restore,restore-alone,restore-faults,share,snapshot,tabs,take-back,undo,undo-of,way-back,writer,writing}',
      'tests/state/new-visit',
      'tests/migrations/database',
    ],
  },
};
