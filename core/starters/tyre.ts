/**
 * A tyre's size as it is moulded on its wall, such as `205/55R16`: section width in mm, section height in % of it, rim in
 * inches. Nominal overall diameter = rim + 2 · width · aspect ratio / 100 (ISO 4000-1, the ETRTO Standards Manual; from
 * memory).
 */

/** mm but for the aspect ratio, %. */
export interface Tyre {
  readonly sectionWidth: number;
  readonly aspectRatio: number;
  readonly rimDiameter: number;
  /** Nominal, new, unloaded. */
  readonly overallDiameter: number;
  /** How high the wheel's centre stands with the car's load on it. */
  readonly loadedRadius: number;
}

const INCH = 25.4;
/** Of a radial's section, what its load leaves of its height: trade practice, from memory. */
const UNDER_LOAD = 0.8;
/** No road tyre is smaller or larger: mm, %, inches. */
const LIMITS = { width: [105, 445], ratio: [20, 100], rim: [8, 26] } as const;
/** Without a ratio moulded on it a tyre's section is about as high as this, %; from memory. */
const FULL_RATIO = 82;

const SIZE = /(?<!\d)(\d{3})\s*(?:\/\s*(\d{2,3}))?\s*(?:Z?R[F]?|[-–BD])\s*(\d{2}(?:[.,]5)?)(?!\d)/i;

/** The first size in a text, as a job card has it; nothing where there is none that a tyre may have. */
export function tyreOf(text: string): Tyre | undefined {
  const [, width, ratio, rim] = SIZE.exec(text) ?? [];
  const sectionWidth = Number(width);
  const aspectRatio = ratio === undefined ? FULL_RATIO : Number(ratio);
  const inches = Number(rim?.replace(',', '.'));
  if (!isWithin(sectionWidth, LIMITS.width) || !isWithin(aspectRatio, LIMITS.ratio) || !isWithin(inches, LIMITS.rim)) {
    return undefined;
  }
  const rimDiameter = inches * INCH;
  const height = (sectionWidth * aspectRatio) / 100;
  return {
    sectionWidth,
    aspectRatio,
    rimDiameter,
    overallDiameter: rimDiameter + 2 * height,
    loadedRadius: rimDiameter / 2 + UNDER_LOAD * height,
  };
}

const isWithin = (x: number, [low, high]: readonly [number, number]): boolean => x >= low && x <= high;
