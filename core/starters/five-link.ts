import type { Starter } from './starter.ts';

/** Two upper links (1, 2), a leading and a square lower link (3, 4), and a toe link behind the axle (5). */
export const fiveLink: Starter = {
  kind: 'five-link',
  axle: 'rear',
  name: 'rear, toe link behind the axle',
  points: {
    inner1: [118, 447, 466],
    outer1: [31, 676, 481],
    inner2: [-131, 438, 452],
    outer2: [-46, 681, 472],
    inner3: [226, 417, 236],
    outer3: [44, 697, 214],
    inner4: [-72, 341, 221],
    outer4: [-28, 708, 206],
    inner5: [-207, 379, 276],
    outer5: [-164, 699, 269],
    wheelCentre: [0, 768, 314],
  },
  camber: -1,
  toe: 0.15,
};
