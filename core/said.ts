/**
 * What is to be said to a person, as data: what, how far, which way, of which part. Kernels return this and no sentence;
 * a catalogue of words (core/words) makes the sentence, in one language or another. Lengths mm, angles degrees. Long, so
 * that it is one page to read.
 */
import type { AdjusterRef, AxleName, Corner, Position, ShimCount } from './corners.ts';

/** Where an adjuster stands, as its scale counts. */
export type Place =
  /** A pack of shims. */
  | { readonly as: 'thickness'; readonly mm: number }
  /** On a scale in mm with a middle. */
  | { readonly as: 'scale'; readonly mm: number }
  /** A number or letter stamped on it. */
  | { readonly as: 'number'; readonly label: Position }
  | { readonly as: 'chart'; readonly label: Position }
  /** A label after another that said what is counted. */
  | { readonly as: 'label'; readonly label: Position }
  | { readonly as: 'steps'; readonly steps: number }
  /** Marks of a cam from its zero, and the angle that they are. */
  /** `side`: where the point is, as nobody said which way the marks count; off the middle, or from the end of travel. */
  | { readonly as: 'mark'; readonly marks: number; readonly degrees: number; readonly side?: Bearing | 'end' }
  /** Turned to an angle of its own scale. */
  | { readonly as: 'angle'; readonly degrees: number }
  /** Leaning by an angle, + out. */
  | { readonly as: 'tilt'; readonly degrees: number }
  | { readonly as: 'turns'; readonly turns: number }
  /** A wedge of so many degrees; 0: none. */
  | { readonly as: 'wedge'; readonly degrees: number }
  /** A tapered disc turned to an angle; absent: none. Of sleeves: the plain one. */
  | { readonly as: 'taper'; readonly disc?: Taper; readonly part?: 'sleeve' };

export interface Taper {
  readonly taper: number;
  /** Where its thick side stands. */
  readonly at: number;
}
export type Sense = 'clockwise' | 'anticlockwise';
/** Which way something goes, seen from the car. */
export type Bearing = 'forward' | 'rearward' | 'outboard' | 'inboard' | 'up' | 'down';

/** What the hand does to an adjuster. A kind whose work none of these is takes `set`, or adds an act here and its words. */
export type Act =
  | { readonly act: 'set'; readonly from: Place; readonly to: Place }
  /**
   * `stack`: the shims that make the pack afterwards, thickest first; none where its sizes do not make it. `holds`: those
   * that are in it now, where they are known.
   */
  | {
      readonly act: 'change-shims';
      readonly by: number;
      readonly from: number;
      readonly to: number;
      readonly stack: readonly number[];
      readonly holds?: readonly number[];
    }
  | { readonly act: 'turn-to-number'; readonly from: Position; readonly to: Position }
  /** Marks, + towards higher ones; which way the point `at` goes. `sense`: seen from the bolt head, where it is on file. */
  | {
      readonly act: 'turn-marks';
      readonly at: string;
      readonly by: number;
      readonly from: number;
      readonly to: number;
      /** Absent where it ends where it began. */
      readonly goes?: Bearing;
      readonly sense?: Sense;
      /** Without a sense: what the rack shows as it is turned, degrees. */
      readonly shows?: { readonly angle: 'camber' | 'toe'; readonly by: number };
    }
  /**
   * Turns, + longer, and the mm that they are. `sense`: where it is on file; seen from `seenFrom`. `sets`: of a rod that
   * both steered wheels of an axle hang on, what it does to the two.
   */
  | {
      readonly act: 'turn-rod';
      readonly turns: number;
      readonly mm: number;
      readonly sets?: 'toe-in' | 'toe-out' | 'to-the-left' | 'to-the-right';
      readonly sense?: Sense;
      readonly seenFrom?: string;
    }
  | {
      readonly act: 'slide';
      readonly by: number;
      readonly from: number;
      readonly to: number;
      readonly goes: Bearing;
      /** It holds an arm's bush, which is not to be twisted where the car stands; else it is a plate, as at the top of a strut. */
      readonly bush?: true;
    }
  /**
   * Degrees that the wheel's top leans out against its strut; `from` and `to` as the adjuster's own scale has them.
   * `camber`: what the wheel's camber gains by it, which is less, as the strut follows.
   */
  | {
      readonly act: 'tilt';
      readonly by: number;
      readonly from: number;
      readonly to: number;
      readonly with: 'hand' | 'cam-bolt';
      readonly camber?: number;
    }
  | { readonly act: 'turn-sleeve'; readonly from: number; readonly to: number }
  /** One sleeve of several for another, or turned: 0° leans the axis outboard, 90° to the rear; absent: the plain one. */
  | { readonly act: 'change-sleeve'; readonly from?: Taper; readonly to?: Taper }
  /** The thick edge is seen from outside the wheel, as the hand of a clock points; the tapers' own angles turn with the side. */
  | { readonly act: 'change-taper'; readonly from?: Taper; readonly to?: Taper; readonly side: 'left' | 'right' }
  /** Degrees; 0: none fitted. */
  | { readonly act: 'change-wedges'; readonly from: number; readonly to: number }
  | { readonly act: 'go-to-chart-position'; readonly from: Position; readonly to: Position }
  | { readonly act: 'go-steps'; readonly by: number; readonly from: number; readonly to: number };

/** Until when a move that goes by the rack is made, as its sentence has it. */
export interface SetByFigure {
  readonly angle: 'camber' | 'caster' | 'toe';
  /** Of which wheel, where it is to be said of a part that both hang on. */
  readonly corner?: Corner;
  /** As the shop writes it: toe may be a length. */
  readonly figure: string;
  /** The figure rises on the way. */
  readonly rises: boolean;
}

/** What stands about such a move. Figures as the shop writes them; `within`: where 95 of 100 lie, either way. */
export type LiveSaid =
  /** Over the figure that it is turned to. */
  | { readonly live: 'until'; readonly act: Act }
  /** Beside what another angle reads once it is there. */
  | { readonly live: 'then'; readonly angle: SetByFigure['angle'] }
  | { readonly live: 'sweep'; readonly figure: string }
  /** It reads elsewhere than it should. */
  | {
      readonly live: 'apart';
      readonly angle: SetByFigure['angle'];
      readonly read: string;
      readonly figure: string;
      readonly within: string;
    }
  /** A move to come, and one that was made: `stands` as it was read off. */
  | { readonly live: 'way'; readonly angle: SetByFigure['angle']; readonly figure: string }
  | {
      readonly live: 'made';
      readonly angle: SetByFigure['angle'];
      readonly figure: string;
      readonly stands?: string;
    }
  /** Over the angles that a rack may show. */
  | { readonly live: 'which' };

/** One step of an adjuster, of which what it does is told. */
export type Step =
  | { readonly step: 'more-shim'; readonly mm: number }
  /** `goes`: which way it takes the point, seen from the car. */
  | {
      readonly step: 'towards-plus';
      readonly by: number;
      readonly unit: 'marks' | 'mm' | 'degrees';
      readonly goes?: Bearing;
      /** Nobody said which side + is. */
      readonly unsided?: true;
    }
  | { readonly step: 'longer'; readonly turns: number }
  | { readonly step: 'turned'; readonly degrees: number }
  | { readonly step: 'to'; readonly from: Place; readonly to: Place };

/** The parts or work that would let an adjuster go further. Trade practice, no source. */
export type Remedy =
  | 'offset-bush'
  | 'offset-bush-or-thinner-bracket'
  | 'more-shims'
  | 'shorter-rod'
  | 'longer-rod'
  | 'longer-slots'
  | 'more-tilt'
  | 'wedge-the-other-way'
  | 'thicker-wedge'
  | 'more-taper';

/** Where a move stands in a job of several. */
export type JobEnd = 'left' | 'right' | 'front' | 'rear';
/** Moves that are done in one go, as the same bolts are loosened for all of them: one of a job. */
export interface JobPart {
  /** The same for all moves of the job, and for no other. */
  readonly id: string;
  /** What of the job this move is. */
  readonly end: JobEnd;
  /** The arm that it is done to, such as `upper arm`. Absent: it is done to both sides of an axle. */
  readonly arm?: string;
}

/** A job as it is said: its moves' acts, in working order. */
export type JobSaid = readonly { readonly end: JobEnd; readonly act: Act }[];

/** An adjuster by the name that the user gave it. */
export interface Named extends AdjusterRef {
  readonly name: string;
}

/** What a person must know beside a plan's figures. */
export type Note =
  /** Adjusters whose effect is a chart's. */
  | { readonly note: 'by-chart'; readonly names: readonly string[] }
  /**
   * Degrees, + to the right, of thrust that is left where front toe is read against the centre line; which way the steering
   * wheel will stand off as the car rolls straight, and how far where the steering ratio is on file.
   */
  | {
      readonly note: 'thrust-left';
      readonly thrust: number;
      readonly goes: 'left' | 'right';
      readonly degrees?: number;
    }
  /**
   * Degrees, + to the right, that the steering wheel stood off level while toe was read. `road`: what that is at the road
   * wheels, which the plan counts in; absent where no steering ratio is on file. `stays`: what it cannot put straight.
   */
  | { readonly note: 'wheel-stood-off'; readonly degrees: number; readonly road?: number; readonly stays?: number }
  /** Left and right of the same name must stay within so many mm of each other, and their lengths are not on file. */
  | { readonly note: 'lengths-unknown'; readonly axle: AxleName; readonly name: string; readonly most: number }
  /** Most toe, degrees, over so many mm of travel either way. */
  | {
      readonly note: 'bump-steer';
      readonly corner: Corner;
      readonly before: number;
      readonly after: number;
      readonly travel: number;
    }
  /** mm that bushes take up as the links of an axle do not agree. */
  | { readonly note: 'strain'; readonly corners: readonly Corner[]; readonly before: number; readonly after: number }
  /**
   * How far an axle on links goes from where it was read: degrees that the pinion's nose goes up, mm to the left.
   * `kept`: within how much either way, where nobody typed it; absent where it was typed. `beyond`: what was typed
   * cannot be met within that.
   */
  | {
      readonly note: 'axle-goes';
      readonly axle: AxleName;
      readonly pinion: number;
      readonly aside: number;
      readonly kept?: { readonly pinion?: number; readonly aside?: number };
      readonly beyond?: true;
    }
  /** Two adjusters that may not differ by more than `most`, mm, and differ by `by` where one of them is left. */
  | {
      readonly note: 'too-far-apart';
      readonly both: readonly [Named, Named];
      readonly most: number;
      readonly by: number;
    }
  /** Packs that are changed and of which nobody knows what is in them: none of it is counted on. */
  | { readonly note: 'packs-unknown'; readonly packs: readonly Named[] }
  /** A pack that was found thinner than the least, mm, and that the plan leaves so. */
  | { readonly note: 'below-least'; readonly pack: Named; readonly holds: number; readonly least: number }
  /**
   * Not every setting of an axle's or a corner's adjusters was tried: of so many the best that was found. `around`: within
   * how much of it, on every adjuster at once, none is better. `offAim`: half windows that it is off its aims, all
   * together; no setting could gain more.
   */
  | {
      readonly note: 'best-found';
      readonly settings: number;
      readonly around?: { readonly by: number; readonly unit: 'turns' | 'positions' };
      readonly offAim?: number;
    }
  /** There was too much to search: there may be a better plan, and one in the windows where this one is not. */
  | { readonly note: 'not-proven'; readonly inWindow: boolean }
  /** Shims that would be needed beside those there are. */
  | { readonly note: 'shims-missing'; readonly shims: readonly ShimCount[] }
  /** Shims that are needed beside those there are, as a pack that is left alone keeps its own. */
  | { readonly note: 'shims-short'; readonly shims: readonly ShimCount[] }
  /** Shims that a pack takes out of others, which have to be opened first. */
  | {
      readonly note: 'shims-borrowed';
      readonly by: Named;
      readonly shims: readonly ShimCount[];
      readonly from: readonly Named[];
    };

/** How an angle of one side stands to the other's. */
export type Level = 'low' | 'ok' | 'high';
/** What a pattern of camber, SAI and included angle makes one look at. Where to look, never a verdict. */
export type Suspect =
  | 'knuckle-or-spindle'
  | 'moved-pivot'
  | 'lower-arm'
  | 'upper-arm'
  | 'tower-and-knuckle-or-strut'
  | 'lower-arm-or-tower-out'
  | 'tower-in'
  | 'knuckle-or-strut'
  | 'spindle'
  | 'axle-beam'
  | 'subframe'
  | 'steering-arm'
  | 'wheel-moved-back'
  | 'sai-first'
  | 'rear-arm'
  | 'axle-tube'
  | 'rear-axle'
  | 'rear-subframe';
export type Hint = { readonly where: Corner | AxleName } & (
  | {
      readonly kind: 'pattern';
      readonly sai: Level;
      readonly camber: Level;
      readonly included: Level;
      readonly look: Suspect;
    }
  /** Included angles differ, degrees, and neither side is further out. */
  | { readonly kind: 'included'; readonly difference: number }
  /** Caster differs side to side, degrees. */
  | { readonly kind: 'setback'; readonly difference: number }
  /** As `pattern`, against what the maker says, with what the adjusters have in it taken off. */
  | {
      readonly kind: 'against-maker';
      readonly sai: Level;
      readonly camber: Level;
      readonly included: Level;
      readonly look: Suspect;
    }
  /** Both sides lean the same way, as seen from the front: what both hang on has gone to that side. */
  | { readonly kind: 'shifted'; readonly to: 'left' | 'right'; readonly look: 'subframe' }
  /** mm that this wheel is further back than the other; `casterLow`: its caster is less, as it would be then. */
  | {
      readonly kind: 'moved-back';
      readonly length: number;
      readonly casterLow?: true;
      readonly look: 'wheel-moved-back';
    }
  /** Toe-out on turns: degrees by which the outer wheel turns more than the maker says, or the left more than the right. */
  | {
      readonly kind: 'turns';
      readonly by: number;
      readonly against: 'maker' | 'other-side';
      readonly look: 'steering-arm';
    }
  /** Camber is off, degrees, with what the adjusters have in it taken off; of an axle left − right. */
  | { readonly kind: 'camber'; readonly by: number; readonly against: 'maker' | 'other-side'; readonly look: Suspect }
  /** Both rear wheels point to the same side, + to the right, degrees, and nothing sets their toe. */
  | { readonly kind: 'askew'; readonly by: number; readonly look: 'rear-axle' | 'rear-subframe' }
  /** One rear wheel points off, + in, degrees, and nothing sets its toe. */
  | { readonly kind: 'rear-toe'; readonly by: number; readonly look: 'rear-arm' | 'axle-tube' }
  /** The sides differ, and adjusters of which nobody knows where they stand may be why. */
  | { readonly kind: 'places-first'; readonly unknown: readonly Named[] }
);

/** An adjuster of a corner, by id, and where it stands. */
export interface StandsAt {
  readonly adjuster: string;
  readonly position: Position;
}

/** What limits a plan: the window that is met least surely, 0…1, and what keeps it from being likelier. */
export interface Limit {
  readonly where: Corner | AxleName;
  readonly angle: string;
  readonly chance: number;
  /** No adjuster that may be moved changes it. */
  readonly fixed?: true;
  /** Adjusters that the plan has at the end of their travel. */
  readonly atStop?: readonly Named[];
}

/** Why a re-measure is not as predicted, by name: core/learn/explain/guesses.ts has them all. */
export type Cause =
  | 'noise'
  | 'not-made'
  | 'half-made'
  | 'twice-made'
  | 'wrong-way'
  | 'other-side'
  | 'sides-exchanged'
  | 'slipped'
  | 'reversed'
  | 'sign'
  | 'digits'
  | 'decimal'
  | 'swapped'
  | 'misread'
  | 'bent';

/** A cause and what it is about. */
export interface Explained {
  readonly cause: Cause;
  /** Whose move, figure or parts. */
  readonly corner?: Corner;
  /** Of a move: the adjuster by its name, where it should stand and where it does by this. */
  readonly adjuster?: Named;
  readonly asked?: Place;
  readonly stands?: Place;
  /** Of a figure: of which angle (absent: of all), in the reading before the moves or after them; degrees. */
  readonly angle?: string;
  readonly reading?: 'before' | 'after';
  readonly read?: number;
  readonly meant?: number;
}

/** What a careful hand prefers, by name: core/plan/preferences.ts has them all. */
export type PreferenceId =
  | 'few-adjusters'
  | 'small-moves'
  | 'dead-centre'
  | 'end-of-travel'
  | 'small-parts'
  | 'alike'
  | 'undone'
  | 'bump-steer'
  | 'camber-gain'
  | 'not-again';
