import { doubleWishbone } from './double-wishbone.ts';
import { fiveLink } from './five-link.ts';
import type { SuspensionPicture } from './suspension-picture.ts';

/** The drawing of each suspension kind. A new kind is one more file and one more line. */
export const suspensionPictures: Readonly<Record<string, SuspensionPicture | undefined>> = {
  'double-wishbone': doubleWishbone,
  'five-link': fiveLink,
};
