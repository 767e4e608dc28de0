import type { SuspensionPicture } from './suspension-picture.ts';

const numbers = [1, 2, 3, 4, 5] as const;

export const fiveLink: SuspensionPicture = {
  name: 'Five links',
  points: {
    inner1: [70, 450, 525],
    outer1: [30, 660, 540],
    inner2: [-150, 430, 505],
    outer2: [-60, 665, 530],
    inner3: [240, 420, 230],
    outer3: [50, 690, 210],
    inner4: [-60, 310, 215],
    outer4: [-30, 705, 195],
    inner5: [-220, 345, 285],
    outer5: [-170, 690, 280],
    wheelCentre: [0, 770, 320],
  },
  links: numbers.map((n) => [`inner${n}`, `outer${n}`] as const),
  upright: ['outer1', 'outer2', 'outer5', 'outer4', 'outer3', 'wheelCentre'],
};
