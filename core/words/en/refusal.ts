/** A refusal as a sentence: which field, in a person's words, and why. */
import { CORNERS } from '../../corners.ts';
import type { FieldPath, Names, Refused } from '../../rule.ts';
import type { Units } from '../words.ts';
import { FIELD_WORDS, ONE_OF, SILENT } from './field-words.ts';
import { missing, refused } from './refused.ts';
import { spaced } from './spaced.ts';

/** "Diameter at which toe is a length: not “12x” but a number from 100 to 2000 mm." */
export function refusal(what: Refused, names?: Names, units?: Units): string {
  const { field, rule } = what;
  const where = field && fieldName(pathOf(field), names, STRAY.includes(rule.is));
  const lacks = where ? missing(what, units) : undefined;
  if (where && lacks !== undefined) return `${capital(where)} ${isMany(where) ? 'are' : 'is'} missing${lacks}.`;
  return `${capital((where ? `${where}: ` : '') + refused(what, units))}.`;
}

/** "Shim sizes", "rods that it lengthens" are, "distance between the two bolts" and "what it corrects" is. */
function isMany(name: string): boolean {
  const last = name.split(', ').at(-1) ?? '';
  if (/^(what|which|where|how|whether|when)\b/i.test(last)) return false;
  const [head = ''] = last.split(/ (?:that|at|of|for|between|where|when|by|to)\b/);
  return /[^s]s$/.test(head);
}

/** What the field's own name is wrong by. */
const STRAY: readonly string[] = ['no-such', 'no-such-adjuster'];

/** Where what follows is an adjuster's id, dots and all. */
const BY_ID = /^(.*\b(?:settings|moved|from|to)(?:\.(?:LF|RF|LR|RR|left|right))?)\.(.+)$/;

/** `front.adjusters[0].at` → ['front', 'adjusters', 0, 'at'] */
export function pathOf(field: string): FieldPath {
  const [, before, id] = BY_ID.exec(field) ?? [];
  if (before !== undefined && id !== undefined) return [...pathOf(before), id];
  return [...field.matchAll(/\[(\d+)\]|[^.[\]]+/g)].map(([part, place]) =>
    place === undefined ? part : Number(place),
  );
}

function fieldName(path: FieldPath, names: Names | undefined, stray: boolean): string {
  const words: string[] = [];
  path.forEach((part, i) => {
    const here = path.slice(0, i + 1);
    const given = names?.given?.(here);
    const asked = names?.asked?.(here);
    const isLast = i === path.length - 1;
    const list = path[i - 1];
    if (typeof part === 'number') {
      // The list is not said beside one of it.
      if (words.at(-1) === FIELD_WORDS[String(list)] && ONE_OF[String(list)]) words.pop();
      words.push(given ? `“${given}”` : placeIn(path.slice(0, i), part));
    } else if (given || isId(path, i) || (stray && isLast)) words.push(`“${given ?? part}”`);
    else if (isLast || asked || !SILENT.includes(part)) words.push(asked ? small(asked) : wordsOf(path, i));
  });
  return words.join(', ').replace(/\b(LF|RF|LR|RR), /g, '$1 ');
}

/** What a field is called where it stands: by the list or object that it lies in, else alone. */
function wordsOf(path: FieldPath, i: number): string {
  const part = String(path[i]);
  const within = path.slice(0, i).findLast((one) => typeof one === 'string');
  if (isCorner(part)) return part;
  return wordsFor(`${within}.${part}`) ?? wordsFor(part) ?? spaced(part);
}

const isCorner = (part: unknown): boolean => CORNERS.some((corner) => corner === part);

/** Whether it is an adjuster's id in where adjusters stand. */
function isId(path: FieldPath, i: number): boolean {
  const [before, ...more] = path.slice(0, i).reverse();
  const [holder] = isCorner(before) || before === 'left' || before === 'right' ? more : [before];
  return ['settings', 'from', 'to', 'moved'].includes(String(holder)) && !isCorner(path[i]) && !isSide(path[i], before);
}

const isSide = (part: unknown, before: unknown): boolean =>
  before === 'settings' && (part === 'left' || part === 'right');

const AXES = ['forward', 'outboard', 'up'];

/** One of a list, or of the numbers of a vector or a range. */
function placeIn(path: FieldPath, place: number): string {
  const [list, holder] = [...path].reverse();
  const one = ONE_OF[String(list)];
  if (one) return `${one} ${place + 1}`;
  if (list === 'range') return place === 0 ? 'lower end' : 'upper end';
  const isVector = holder === 'points' || list === 'direction' || list === 'offset';
  return (isVector ? AXES[place] : undefined) ?? `number ${place + 1}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** A label within a sentence; SAI stays as it is. */
const small = (label: string): string =>
  /^[A-Z][A-Z]/.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1);

/** A field may have any name in a file, also one that every object has. */
const wordsFor = (field: string): string | undefined =>
  Object.hasOwn(FIELD_WORDS, field) ? FIELD_WORDS[field] : undefined;
