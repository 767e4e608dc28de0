/** Why a careful hand prefers what it does. */
import type { PreferenceId } from '../../said.ts';

const REASONS: Readonly<Record<PreferenceId, string>> = {
  'few-adjusters': 'Each adjuster that is loosened has to be torqued again and may slip.',
  'small-moves': 'A small move disturbs least of what is not known, and no other move has to undo it.',
  'dead-centre':
    'Near dead centre a cam hardly moves anything: it is set without feel, and nothing is left for the next time.',
  'end-of-travel': 'At the end of its travel nothing is left for a correction, nor for the next time.',
  'small-parts': 'A thin wedge sits better than a thick one and bends less of what it is clamped between.',
  alike: 'Rods that are changed by as much left and right do not push the axle sideways or pitch it.',
  undone: 'Toe that one move makes and another takes back is work for nothing, and both have to be right.',
  'bump-steer': 'A wheel that steers itself on bumps more than before is felt by the driver.',
  'camber-gain': 'A wheel that leans in less as the body rolls on it holds the road less well.',
  'not-again': 'What is set and tightened is taken up again only where that is worth it.',
};

export const preference = (id: PreferenceId): string => REASONS[id];
