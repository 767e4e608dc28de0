/** The tools there are, in the order in which a car is looked at; each is fetched when it is opened. */
import type { ComponentType } from 'preact';
import type { Tool } from './tool.ts';

interface Entry {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly load: () => Promise<ComponentType<{ readonly visit: string }>>;
}

const screen = async (tool: Tool): Promise<ComponentType<{ readonly visit: string }>> =>
  (await import('./tool-screen.tsx')).screenOf(tool);

/** Adding a tool is its file and a line here. */
export const GROUPS: readonly (readonly [title: string, tools: readonly Entry[]])[] = [
  [
    'Before the angles',
    [
      {
        id: 'heights',
        title: 'Ride heights',
        about: 'Four heights with a tape, and what each angle gains by them.',
        load: async () => screen((await import('./heights.tsx')).heights),
      },
      {
        id: 'run-out',
        title: 'Run-out',
        about: 'Two or four readings round the wheel, and what is left without its wobble.',
        load: async () => screen((await import('./run-out.tsx')).runOut),
      },
      {
        id: 'repeat',
        title: 'How well it repeats',
        about: 'The same thing read again and again: the scatter of your own gauge.',
        load: async () => screen((await import('./repeat.tsx')).repeat),
      },
    ],
  ],
  [
    'Toe',
    [
      {
        id: 'across',
        title: 'Tape across or toe plates',
        about: 'Two distances across an axle: its total toe.',
        load: async () => screen((await import('./across.tsx')).across),
      },
      {
        id: 'strings',
        title: 'Strings beside the car',
        about: 'Toe of each wheel, thrust angle and setback.',
        load: async () => screen((await import('./strings.tsx')).strings),
      },
      {
        id: 'rough',
        title: 'A rough first toe',
        about: 'So that a rebuilt car can be driven to a rack.',
        load: async () => screen((await import('./rough.tsx')).rough),
      },
      {
        id: 'slip',
        title: 'Side slip',
        about: 'From a slip plate to total toe, and back.',
        load: async () => screen((await import('./slip.tsx')).slip),
      },
    ],
  ],
  [
    'Camber, caster, SAI',
    [
      {
        id: 'camber',
        title: 'Camber: plumb line or level',
        about: 'With a rule, or a level turned round.',
        load: async () => screen((await import('./camber.tsx')).camber),
      },
      {
        id: 'phone',
        title: 'Camber with this phone',
        about: 'Its own inclinometer, zeroed by turning it round.',
        load: async () => screen((await import('./phone.tsx')).phone),
      },
      {
        id: 'sweep',
        title: 'Steering sweep',
        about: 'Caster and SAI, exactly, at any two angles.',
        load: async () => screen((await import('./sweep.tsx')).sweep),
      },
    ],
  ],
  [
    'Axles and bent parts',
    [
      {
        id: 'axle',
        title: 'Rigid axle',
        about: 'Caster on a tilted frame, pinion angle, where it stands across the car.',
        load: async () => screen((await import('./axle.tsx')).axle),
      },
      {
        id: 'bent',
        title: 'What is bent',
        about: 'Camber, SAI, setback and turns: where to look.',
        load: async () => screen((await import('./bent.tsx')).bent),
      },
    ],
  ],
];

export const toolOf = (id: string): Entry | undefined =>
  GROUPS.flatMap(([, tools]) => tools).find((one) => one.id === id);
