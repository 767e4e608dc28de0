/**
 * What a field may be, as data: the rule that a refused value breaks, with its figures. A catalogue of words
 * (core/words) says it. Lengths mm, angles degrees.
 */
import type { Position } from './corners.ts';

/** An input that is refused. */
export interface Refused {
  /** Where it stands, such as `front.adjusters[0].at`; left out where that is plain to see. */
  readonly field?: string;
  /** What was given; undefined where nothing was. */
  readonly value: unknown;
  readonly rule: Rule;
}

/** What is allowed. */
export type Rule = General | OfAdjusters | OfPoints | OfDimensions | OfTyped | OfFiles | { readonly is: Phrase };

/** What any field may need. `unit` stands behind the figures, '' where there is none. */
type General =
  | { readonly is: 'number'; readonly low: number; readonly high: number; readonly unit: string }
  | { readonly is: 'above-zero'; readonly high: number; readonly unit: string }
  | { readonly is: 'whole'; readonly low: number; readonly high: number; readonly of?: 'marks' | 'shims' }
  | { readonly is: 'finite'; readonly unit?: 'mm' | 'degrees' }
  /** [low, high], each within ±`limit`. */
  | { readonly is: 'range'; readonly unit: string; readonly limit?: number }
  | { readonly is: 'text'; readonly least: number; readonly most: number; readonly short?: true }
  | { readonly is: 'exactly'; readonly value: string }
  /** One of two or three; `names` as a person calls them, where the values are none. */
  | { readonly is: 'choice'; readonly of: readonly string[]; readonly names?: readonly string[] }
  /** One of more. */
  | {
      readonly is: 'one-of';
      readonly of: readonly Position[];
      readonly unit?: '°';
      readonly names?: readonly string[];
    }
  | { readonly is: 'list'; readonly most?: number; readonly items?: Items }
  | { readonly is: 'at-least-one'; readonly items?: Items }
  | { readonly is: 'at-most'; readonly most: number; readonly items?: Items | 'characters' }
  /** An object; `open`: it may have more than these fields. */
  | {
      readonly is: 'object';
      readonly as?: 'object' | 'car-file' | 'backup';
      readonly fields: readonly string[];
      readonly open?: true;
      readonly in?: 'mm' | 'degrees' | 'shims' | 'deviations' | 'a-step' | 'positions';
    }
  /** Nothing of that name: what there is. */
  | { readonly is: 'no-such'; readonly what: 'field' | 'point' | 'dimension'; readonly known: readonly string[] }
  /** What a schema expects that says nothing of its own. */
  | { readonly is: 'type'; readonly type: string };

/** What a list is of. */
export type Items = 'positions' | 'chart-positions' | 'shim-sizes' | 'links' | 'wedges' | 'tapers' | 'adjusters';

/** What a suspension lacks that an adjuster needs. */
export type Lack = 'strut' | 'ball-joints' | 'moving-points' | 'rods';

export interface Called {
  readonly id: string;
  readonly name: string;
}

type OfAdjusters =
  /** Where an adjuster may stand, as its scale counts. */
  | {
      readonly is: 'place';
      readonly on: 'mm' | 'degrees' | 'turns' | 'steps' | 'angle' | 'thickness';
      readonly low: number;
      readonly high: number;
    }
  /** A taper at an angle, or `none`; `of`: those that are to be had. */
  | { readonly is: 'taper'; readonly none: string; readonly of?: readonly number[]; readonly such: string }
  | { readonly is: 'shim'; readonly above: number; readonly high: number }
  | { readonly is: 'thicknesses'; readonly most: number }
  /** A step that leaves an adjuster no more than so many positions. */
  | { readonly is: 'step'; readonly least: number; readonly most: number; readonly unit: string }
  /** The value is what the shims of a pack make together, mm. */
  | { readonly is: 'makes'; readonly thickness: number }
  | { readonly is: 'fits'; readonly suspension: string; readonly lacks: Lack }
  /** The value is to be the id of one of these. */
  | { readonly is: 'adjuster'; readonly among: readonly Called[] }
  /** The field's own name is to be. */
  | { readonly is: 'no-such-adjuster'; readonly among: readonly Called[] }
  /** The value is how many there are; `two`: of two adjusters, these with so many positions each. */
  | { readonly is: 'combinations'; readonly most: number; readonly of: 'corner' | 'axle'; readonly two?: string };

type OfPoints =
  | { readonly is: 'point'; readonly among: readonly string[] }
  | { readonly is: 'apart-from'; readonly point: string }
  | { readonly is: 'as-on-the-left'; readonly kind: Called }
  /** It is not to be there. */
  | { readonly is: 'absent'; readonly why: 'by-points' | 'no-rack'; readonly suspension: string };

/** Of the tape: what lets a triangle close, mm. */
type OfDimensions =
  | { readonly is: 'longer-than-rise'; readonly rise: number }
  | { readonly is: 'reaches'; readonly least: number }
  | { readonly is: 'strut-length'; readonly above: number }
  | { readonly is: 'closes'; readonly arm: 'upper' | 'lower'; readonly least: number; readonly most: number };

/** Of what is typed and measured. */
type OfTyped =
  | { readonly is: 'angle'; readonly mode: 'degrees' | 'degrees-minutes'; readonly limit: number }
  | { readonly is: 'length'; readonly limit: number }
  | { readonly is: 'below-high'; readonly high: number; readonly unit?: string }
  | { readonly is: 'in-window'; readonly low: number; readonly high: number; readonly unit?: string }
  | { readonly is: 'within-diameter'; readonly diameter: number }
  | { readonly is: 'near-rear'; readonly diameter: number; readonly rear: number }
  | { readonly is: 'steer'; readonly low: number; readonly high: number }
  /** mm; what is far too little or too much may be the same in the other unit. */
  | { readonly is: 'diameter'; readonly low: number; readonly high: number }
  /** The value is by how many degrees two readings are apart. */
  | { readonly is: 'apart'; readonly least: number }
  /** The value is over how many degrees the readings of a level that lies still are spread. */
  | { readonly is: 'steady'; readonly within: number }
  /** The value is how many there are. */
  | { readonly is: 'readings'; readonly least: number }
  /** The value is one standard deviation, in the unit of the readings. */
  | { readonly is: 'scatter'; readonly most: number }
  | { readonly is: 'shim-size'; readonly low: number; readonly high: number; readonly decimals: number }
  | { readonly is: 'shim-sizes'; readonly most: number }
  | { readonly is: 'shared-step'; readonly step: number };

type OfFiles =
  | { readonly is: 'json'; readonly reason: string }
  | { readonly is: 'readable'; readonly reason: string }
  /** The value is how many there are. */
  | { readonly is: 'values'; readonly most: number }
  /** The value is how deep it is. */
  | { readonly is: 'levels'; readonly most: number }
  | { readonly is: 'version'; readonly newest: number; readonly newer: boolean }
  | { readonly is: 'checksum'; readonly own: string }
  | { readonly is: 'count'; readonly there: number }
  | { readonly is: 'car'; readonly id: string; readonly which: 'this' | 'same' };

/** What has no figures. */
export type Phrase =
  | 'given'
  | 'other'
  | 'yes-or-no'
  | 'any-text'
  | 'some-text'
  | 'time'
  | 'id'
  | 'whole-characters'
  | 'own-id'
  | 'vector'
  | 'direction'
  | 'position'
  | 'stamped'
  | 'chart-position'
  | 'own-label'
  | 'labels-differ'
  | 'chart-or-steps'
  | 'point-name'
  | 'body-point-name'
  | 'seen-from'
  | 'other-pack'
  | 'cam-spacing'
  | 'holds-a-step'
  | 'adjuster-kind'
  | 'suspension-kind'
  | 'points'
  | 'given-with-left'
  | 'on-both-sides'
  | 'holds-the-wheel'
  | 'can-reach'
  | 'dimensions'
  | 'near-layout'
  | 'minutes'
  | 'plus-minus'
  | 'fraction'
  | 'thickness'
  | 'shim-count'
  | 'measured'
  | 'windows'
  | 'round'
  | 'listed-once'
  | 'covariance'
  | 'two-or-four'
  | 'preference'
  | 'counts'
  | 'a-count'
  | 'a-checksum'
  | 'stores'
  | 'path';

/** A field's path in parts: names, and places in lists from 0. */
export type FieldPath = readonly (string | number)[];

/** What is called what, of the things that a field's path passes; undefined: nothing is known of it. */
export interface Names {
  /** The name that somebody gave it. */
  readonly given?: (path: FieldPath) => string | undefined;
  /** What a form calls it. */
  readonly asked?: (path: FieldPath) => string | undefined;
}
