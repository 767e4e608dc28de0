/** `npm run words` ends with it: every refusal that core can give, as a person is told of it, of every field that there is. */
import { en } from '../../core/words/en/index.ts';
import { everyRefusal } from './every-refusal.ts';

const all = await everyRefusal();
// Wheel by wheel, side by side and whatever was entered they read the same.
const alike = (text: string): string =>
  text
    .replace(/\b(RF|LR|RR)\b/g, 'LF')
    .replace(/not “[^”]*”/g, 'not “…”')
    .replace(/\b\d+(?=,| is | are |:)/g, '1')
    .replace(/\b[Rr]ear\b/g, 'front')
    .replace(/\bFront\b/g, 'front')
    .replace(/\bon the right\b|\bright\b/g, 'left');
const told = new Map(all.map((one) => [alike(en.refusal(one)), en.refusal(one)]));
console.log([...told.values()].sort().join('\n'));
