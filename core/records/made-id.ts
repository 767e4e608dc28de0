/** Ids made from content, so that every phone makes the same. */

/** FNV-1a, 32 bits: an id from content, not a safeguard. */
export function hash(text: string): string {
  return lane(text, 0x811c9dc5, 0x01000193);
}

/** 64 bits, for what must not meet by chance: two lanes with multipliers of their own. */
export const digest = (text: string): string => hash(text) + lane(text, 0x9e3779b9, 0x85ebca6b);

function lane(text: string, start: number, multiplier: number): string {
  let h = start;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), multiplier) >>> 0;
  return h.toString(16).padStart(8, '0');
}

/** No id is longer; see `text` in core/adjuster/fields.ts. */
const LONGEST = 400;

/** An id under another one: what grows too long is told by its digest, so that it still opens. */
export function under(parent: string, mark: string): string {
  const id = `${parent}~${mark}`;
  return id.length <= LONGEST ? id : `${parent.slice(0, 200)}~${digest(parent)}~${mark}`;
}
