/**
 * Sizes of letters are written in px, as they are on a phone that nobody has set, and built so that they follow the size
 * of text that its owner has chosen: up to 16 px in full, larger ones by as much as those, so that figures that are read
 * from two metres do not push each other off the glass. What is written `calc(15px)` keeps to its drawing's own scale.
 */
const ROOT = 16;

/** `14px` → `0.875rem`; `40px` → `calc(24px + 1rem)`; anything else as it is. */
export function textSize(size: string): string {
  const px = Number(/^(\d+(?:\.\d+)?)px$/.exec(size)?.[1]);
  if (!px) return size;
  return px <= ROOT ? `${px / ROOT}rem` : `calc(${px - ROOT}px + 1rem)`;
}

interface Declaration {
  value: string;
}

/** A plugin for PostCSS, which Vite runs over every style. */
export const textSizes = {
  postcssPlugin: 'text-sizes',
  Declaration: {
    'font-size': (declaration: Declaration): void => {
      declaration.value = textSize(declaration.value);
    },
    font: (declaration: Declaration): void => {
      declaration.value = declaration.value.replace(/(?<= )\d+px(?= )/, textSize);
    },
  },
};
