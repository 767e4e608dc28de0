/**
 * The shapes that every part of Cornerwright agrees on: what a car is, where its adjusters stand,
 * what was read off the rack, what is wanted, and what a plan says. Long, so that it is one page to read from top to bottom.
 *
 * Frame and signs (ISO 8855 axes, trade signs). Corner frame of every corner: x forward, y outboard, z up,
 * millimetres, origin on the ground under the middle of the front axle. A right corner is the mirror
 * image of a left one, so both use the same numbers. Angles are degrees, turns are turns.
 *
 *   camber  −asin(s.z), s = unit spin axis pointing outboard     + top of the wheel leans out
 *   toe     atan2(s.x, s.y)                                      + toe-in
 *   caster  atan2(−k.x, k.z), k = steering axis, lower to upper  + top leans to the rear
 *   SAI     atan2(−k.y, k.z)                                     + top leans inboard
 *   cross   left − right;  thrust (left rear toe − right rear toe)/2, + points to the right
 *   steering wheel, degrees off level                            + turned to the right: clockwise, as the driver sees it
 */

import type { AdjusterRef, AxleName, CarPacks, Corner, Position, ShimCount } from './corners.ts';
import type { Act, Explained, JobPart, Limit, Note, StandsAt } from './said.ts';

export {
  type AdjusterRef,
  type AxleName,
  type CarPacks,
  CORNERS,
  type Corner,
  type Position,
  type ShimCount,
} from './corners.ts';

/** `[x, y, z]`, mm (or a direction without unit). */
export type Vec3 = readonly [number, number, number];

/** Positions of one corner's adjusters, by adjuster id. An adjuster that is absent stands at its reference. */
export type Settings = Readonly<Record<string, Position>>;
/** Positions of a car's adjusters, corner by corner. */
export type CarSettings = Readonly<Partial<Record<Corner, Settings>>>;

/** Hard points of one corner in its corner frame, and the wheel's angles with all adjusters at `reference`. */
export interface Suspension {
  readonly kind: string;
  readonly points: Readonly<Record<string, Vec3>>;
  readonly camber: number;
  readonly toe: number;
  /** The most that a coordinate may be wrong by, ± mm. Default 5, a tape's. */
  readonly tolerance?: number;
  /**
   * Lengths that were measured of a car whose points are else a usual layout's, known to `tolerance`: by the names of the
   * kind's tape dimensions, mm, or with how well each is known, ± 5 where that is not said. The points are the nearest that
   * have them; how well they are known counts each.
   */
  readonly measured?: Readonly<Record<string, number | { readonly value: number; readonly tolerance?: number }>>;
  /** The tape dimensions that the points were built from, kept as they were entered. */
  readonly tape?: Readonly<Record<string, unknown>>;
}

/** What every adjuster has; each kind adds its own fields in its own file. */
export interface AdjusterBase {
  readonly id: string;
  /** As the technician calls it; the id where nothing better was given. */
  readonly name?: string;
  readonly kind: string;
  /** The position at which the geometry was taken: the effect is relative to it. */
  readonly reference: Position;
  /** The maker's figure as the user typed it; never invented. */
  readonly torque?: string;
  /** Minutes to move it once. */
  readonly effort?: number;
  /** `false`: it cannot be turned while the rack is watched, though others of its kind can. */
  readonly live?: boolean;
  /** How far it moves what it moves is what most of its kind do: nobody has looked. */
  readonly usual?: true;
}
/** An adjuster of some kind. */
// biome-ignore lint/suspicious/noExplicitAny: the fields beyond AdjusterBase belong to the kind; its schema checks them.
export type Adjuster = AdjusterBase & Readonly<Record<string, any>>;

/** Both sides of an axle: what is given holds for the left, and for the right as its mirror unless that has its own. */
export interface Axle {
  readonly suspension: Suspension;
  /** Only where the right side is not the mirror of the left. */
  readonly rightSuspension?: Suspension;
  /** Of both sides, the right one as the mirror of the left, unless that has a list of its own. */
  readonly adjusters: readonly Adjuster[];
  /**
   * All adjusters of the right side, in its own corner frame, where they are not the mirror of the left ones: a cam the
   * other way round, another hand of thread, other numbers. Empty: there is none. The same id on both sides is the same
   * adjuster, for limits between left and right.
   */
  readonly rightAdjusters?: readonly Adjuster[];
  readonly steered: boolean;
  /** Chosen by a person: what another car of this build has shown. */
  readonly start?: AxleStart;
}

/** A car: what carries its wheels, and what adjusts them. */
export interface Car {
  readonly id: string;
  readonly label: string;
  readonly plate?: string;
  /** Whose it is, as the sheet names them. */
  readonly customer?: string;
  /** The number on its chassis. */
  readonly vin?: string;
  /** Tyres and their pressures, as they are written on a job card. */
  readonly tyres?: string;
  readonly notes?: string;
  /** Diameter, mm, at which toe is given as a length. */
  readonly wheel: { readonly rimDiameter?: number | undefined };
  /** Degrees that the steering wheel turns for one degree of the road wheels, such as 16. */
  readonly steeringRatio?: number;
  /** mm from the front to the rear wheel centres; by it the body pitches where one end is raised. Absent: a usual one. */
  readonly wheelbase?: number;
  readonly front: Axle;
  readonly rear: Axle;
  /** Where its points and charts are those that readings have taught: see `CarModel`. */
  readonly learned?: Learned;
}

/** How well a car is known after its readings, in the place of tolerances. Worked out of the records, never kept. */
export interface Learned {
  /** Of each corner, or rigid axle, that something was learned of. */
  readonly parts: readonly LearnedPart[];
  /** Wheels' readings that were left out, as no such car could have given them; of which round, where that has an id. */
  readonly leftOut: readonly { readonly corner: Corner; readonly round?: string }[];
  /**
   * Where adjusters of unknown place stood at the newest reading of those, on their own scales, and one standard deviation
   * of that: `settings` of a plan may have them there, and its chance counts how well the place is known.
   */
  readonly places?: readonly (AdjusterRef & { readonly at: number; readonly deviation: number })[];
  /** The newest of the readings, and where the adjusters stood. */
  readonly last?: Pick<Round, 'id' | 'at' | 'reading' | 'settings'>;
}
/** The same of what moves as one. */
export interface LearnedPart {
  /** One, or both of a rigid axle. */
  readonly corners: readonly Corner[];
  /**
   * What is not known for certain, such as `LF.upperFront.x`, mm off the point as it stands in the car, or `LF.cam.toe`, a
   * share of what a chart prints.
   */
  readonly unknowns: readonly string[];
  /** Their covariance: its lower triangle, row by row, in their own units. */
  readonly covariance: readonly number[];
  /** By how much each is off what was entered, in their own units. */
  readonly by?: readonly number[];
}
/** What was learned of another car of the same build, as it is taken for known of this one before anything is read of it. */
export interface AxleStart {
  /** What that car is called. */
  readonly of: string;
  /** Readings that had taught. */
  readonly readings: number;
  /** Of each corner, or of both of a rigid axle. */
  readonly parts: readonly (Omit<LearnedPart, 'by'> & {
    /** Of each unknown where it was found: mm in the corner's frame, or the share that a chart is off. */
    readonly at: readonly number[];
  })[];
}
/** A car as its readings have shown it: its points and charts the likeliest, `learned` how well they are known. */
export type CarModel = Car;

/** Angles of one wheel, degrees. What was not measured is absent. */
export interface WheelReading {
  readonly camber?: number;
  readonly caster?: number;
  readonly toe?: number;
  readonly sai?: number;
}
/** Angles of a wheel that a rack may give. */
export const ANGLES = ['caster', 'camber', 'toe', 'sai'] as const;
/** One of them. */
export type Angle = (typeof ANGLES)[number];

/** How a rigid axle on links stands in the car. What was not measured is absent. */
export interface AxleReading {
  /** Degrees as an inclinometer on the axle shows; + its nose is up. */
  readonly pinionAngle?: number;
  /** mm that a tape has the middle of the axle to the left of the car's. */
  readonly lateral?: number;
  /** In a predicted reading: degrees that it has pitched since it was read; absent where nothing on it has moved. */
  readonly pinionChange?: number;
  /** In a predicted reading: mm that it has gone to the left since it was read. */
  readonly lateralChange?: number;
}

/** What an angle was measured with, where that was not the rack. */
export const MEASURED_BY = ['sweep', 'tape', 'plates', 'string', 'level', 'plumb', 'phone', 'side-slip'] as const;
/** How an angle was measured, and one standard deviation of it, degrees (mm sideways). */
export interface Measuring {
  readonly by: (typeof MEASURED_BY)[number];
  readonly sd: number;
}
/** Those of a reading. Of a total that was measured alone each wheel has 1/√2 of what the total may be off. */
export type Methods = Readonly<
  Partial<Record<Corner, Readonly<Partial<Record<Angle, Measuring>>>>> &
    Partial<Record<AxleName, Readonly<Partial<Record<'pinionAngle' | 'lateral', Measuring>>>>>
>;

/** What a rack reads, corner by corner, degrees; of an axle on links also what an inclinometer and a tape say. */
export interface Reading
  extends Readonly<Partial<Record<Corner, WheelReading>>>,
    Readonly<Partial<Record<AxleName, AxleReading>>> {
  /** What front toe is read against. Default `centreline`. */
  readonly toeReference?: 'centreline' | 'thrust-line';
  /**
   * Degrees that the steering wheel stood off level while front toe was read, the car rolled in straight and the wheel not
   * clamped: + turned to the right. Front toe is that of the road wheels as they stood then; where a gauge gives the total
   * alone, each has half. Absent or 0: it was level, and front toe itself says where the wheels point with it so.
   */
  readonly steeringWheel?: number;
  /** What was not read off the rack; it is taken to be measured so again, and a plan's chance counts its scatter. */
  readonly methods?: Methods;
  /**
   * mm, as the car stood while its angles were read: a tape's, from the ground or a wheel centre up to the body, or by the
   * maker's own points, whose difference may be below 0. What was not measured is absent; a predicted reading has none.
   */
  readonly rideHeights?: Readonly<Partial<Record<Corner, number>>>;
  /** In a predicted reading: corners whose angles are absent because no pose exists there, and with what; in words too. */
  readonly unreachable?: readonly {
    readonly corner: Corner;
    readonly at?: readonly StandsAt[];
    readonly message?: string;
  }[];
}

/** An allowed window, degrees; `aim` defaults to its middle. */
export interface Window {
  readonly low: number;
  readonly aim?: number;
  readonly high: number;
  /** Nobody typed it: what is usual. It gives way where all that was typed cannot be met with it. */
  readonly assumed?: true;
}
/** Angles of a wheel that a spec can give a window to. */
export const WHEEL_ANGLES = ['camber', 'caster', 'toe'] as const satisfies readonly (keyof WheelSpec)[];
/** Windows of a wheel's angles, degrees. What has none may be anything. */
export interface WheelSpec {
  readonly camber?: Window;
  readonly caster?: Window;
  readonly toe?: Window;
}
/** Angles of an axle, derived from its two wheels, that a spec can give a window to. */
export const AXLE_ANGLES = ['totalToe', 'crossCamber', 'crossCaster', 'thrustAngle'] as const;
/** One of them. */
export type AxleAngle = (typeof AXLE_ANGLES)[number];
/** How far a rigid axle on links may go from where it was read: degrees of pitch, mm sideways. */
export const AXLE_CHANGES = ['pinionChange', 'lateralChange'] as const;
/** One of them. */
export type AxleChange = (typeof AXLE_CHANGES)[number];
/** Windows of an axle: of each of its wheels, and of what its two wheels make. */
export interface AxleSpec extends WheelSpec {
  readonly totalToe?: Window;
  readonly crossCamber?: Window;
  readonly crossCaster?: Window;
  /** (left toe − right toe)/2: the thrust angle on the rear axle, steer-ahead on the front. */
  readonly thrustAngle?: Window;
  /** Of a rigid axle on links: degrees that the pinion's nose may go up. */
  readonly pinionChange?: Window;
  /** Of a rigid axle on links: mm that it may go to the left. */
  readonly lateralChange?: Window;
  /** Windows that differ on one side (road crown, odd cars). */
  readonly left?: WheelSpec;
  readonly right?: WheelSpec;
}
/** What is wanted: windows, degrees; mm for what goes sideways. */
export interface Spec {
  /** mm, at which the maker gives toe as a length; absent: that of the car's own gauge. Its windows are angles all the same. */
  readonly toeDiameter?: number | undefined;
  readonly front?: AxleSpec;
  readonly rear?: AxleSpec;
}

/** One standard deviation of the gauge's repeatability, degrees. */
export interface Gauge {
  readonly camber: number;
  readonly caster: number;
  readonly toe: number;
  /** Of an inclinometer on a rigid axle. */
  readonly pinionAngle?: number;
  /** Of the tape that says where a rigid axle stands across the car, mm. */
  readonly lateral?: number;
}

/**
 * `closest`: nearest to the aims. `least-work`: fewest minutes first. `surest`: the best chance that the re-measure is in
 * every window, with what is not known of the dimensions, the moves and the gauge counted in. `practical`, what the app
 * starts from: of all plans whose chance is at least 95 %, or within 2 points of the best there is, the one with the least
 * work, and among equals what a careful hand would do (core/plan/preferences.ts).
 */
export type PlanStyle = 'closest' | 'least-work' | 'surest' | 'practical';

/** An angle that a rack may show while something is turned. */
export type LiveAngle = (typeof WHEEL_ANGLES)[number];

/** What a plan is made of. Angles degrees, lengths mm. */
export interface PlanRequest {
  readonly car: Car;
  readonly spec: Spec;
  /**
   * What is wished beside the windows: it decides among what they leave open, nearer to its aims, a half window of it as
   * far as one of theirs. It is no window: nothing is out of it and it costs no chance. One that is `assumed` is kept
   * to its limits where all windows can be met so.
   */
  readonly wish?: Spec;
  readonly reading: Reading;
  /** Where the adjusters stand now. */
  readonly settings: CarSettings;
  /** Adjusters that are not to be moved. */
  readonly locked?: readonly AdjusterRef[];
  /** Adjusters that were moved in this round: the practical asks for them again only where that is worth it. */
  readonly done?: readonly AdjusterRef[];
  /** Adjusters that are left as they stand this time: the plan is the same, without their moves. */
  readonly leave?: readonly AdjusterRef[];
  readonly style?: PlanStyle;
  /** Minutes that the plan may take at the most, where everything can be brought into its window within them. */
  readonly maxEffort?: number;
  readonly gauge?: Gauge;
  /** The angles that this rack shows while something is turned. Default: none. A usual rack shows camber and toe. */
  readonly live?: readonly LiveAngle[];
  /**
   * Shims that lie ready for packs, beside those that the plan itself takes out of packs. A size that is not listed is
   * plenty, one with the count 0 is out. Absent: nothing is counted.
   */
  readonly drawer?: readonly ShimCount[];
  /**
   * The shims that are in packs now, where they are known: what comes out of another is not counted on and not spoken of.
   * Absent as a whole: each is counted as the fewest shims that make its thickness.
   */
  readonly packs?: CarPacks;
  /**
   * Adjusters whose place in `settings` is a guess, as they were turned until the rack showed a value: one standard
   * deviation of the place, in their own unit. The chance counts what a turn from there may do less or more.
   */
  readonly unsure?: readonly (AdjusterRef & { readonly deviation: number })[];
  /** Of the sentences: one of those that core/words has. Default `en`. */
  readonly language?: string;
}

/** What goes with a move that is set by the rack. */
export interface Watched {
  /** What the rack should show of the angle before it is turned, degrees. */
  readonly from: number;
  /** How far `to` may be off, as it is a guess: one standard deviation, in the adjuster's own unit. */
  readonly within: number;
  /** One standard deviation of what the rack then shows of the wheel's other angles against `expectAfter`, degrees. */
  readonly deviation: WheelReading;
}

/** One move of a plan. */
export interface Move extends AdjusterRef {
  readonly from: Position;
  readonly to: Position;
  /**
   * Turn until the rack shows this angle of the corner at this value, degrees, where that makes the plan surer than to go
   * by the mark: what was not known of its effect on the angle cancels. `to` is then where that will be about, between
   * marks too.
   */
  readonly setBy?: { readonly angle: LiveAngle; readonly value: number };
  /** Where it goes by the rack: what is seen of it on the way, and what that leaves open. */
  readonly watched?: Watched;
  /** One sentence for a person: what to turn, add or take out, and which way; in the request's language. */
  readonly instruction: string;
  /** What the sentence says, as data. */
  readonly act: Act;
  /** Where shims are counted: those that make the pack when the move is done, thickest first. */
  readonly shims?: readonly ShimCount[];
  /** Where it is one of several that are one job; those stand together in the plan. */
  readonly job?: JobPart;
  /**
   * What the rack reads after this move and all before it; where one side alone cannot be, after both. A job is read once,
   * after the last of its moves.
   */
  readonly expectAfter: Reading;
}

/** One angle that the plan leaves out of its window, and why. */
export interface Shortfall {
  /** Whose: a wheel, or an axle for cross, total and thrust. */
  readonly where: Corner | AxleName;
  readonly angle: string;
  readonly predicted: number;
  /** Degrees (mm of `lateralChange`) outside the window: + above `high`, − below `low`. */
  readonly by: number;
  /** Adjusters of the corners concerned that the plan drives to the end of their travel. */
  readonly atStop: readonly AdjusterRef[];
}

/** A move before it is put in words. */
export type BareMove = Omit<Move, 'instruction'>;

/** The moves in working order, and how good it is to make them. */
export interface Plan {
  readonly moves: readonly Move[];
  /** Where every adjuster stands when the plan is done. */
  readonly positions: Readonly<Record<Corner, Settings>>;
  readonly predicted: Reading;
  /** One standard deviation of (re-measured − predicted), degrees, per wheel angle; of an axle as it was read, mm too. */
  readonly deviation: Readonly<Partial<Record<Corner, WheelReading>>> &
    Readonly<Partial<Record<AxleName, Pick<AxleReading, 'pinionAngle' | 'lateral'>>>>;
  readonly inWindow: boolean;
  /** Probability, 0…1, that the re-measure has everything in its window. */
  readonly chance: number;
  /** Each window with the chance, 0…1, that it alone is met, the least first: what limits the plan, and why. */
  readonly odds: readonly Limit[];
  /** Σ((value − aim)/half window)² over every spec given. */
  readonly distance: number;
  /** Minutes. */
  readonly effort: number;
  /**
   * `combinations` of positions there are; `proven`: that no other is better in the plan's style, where all are in their
   * windows if any is. Not of the surest and the practical: of those it takes the best found, as their files say. Nor
   * where a search would have taken too long and was cut (the note `not-proven`), or there are too many to go through and
   * only the best of them were sought; `around` then says within how many
   * positions of it, to either side on every adjuster at once, no other is better, and `bound` a distance that no
   * combination at all comes below.
   */
  readonly optimum: {
    readonly proven: boolean;
    readonly combinations: number;
    readonly around?: number;
    readonly bound?: number;
  };
  readonly shortfall: readonly Shortfall[];
  /** What a person must know beside the figures, a sentence each in the request's language; and as data. */
  readonly notes: readonly string[];
  readonly noted: readonly Note[];
  /** Specs that could not be judged as the angle was not measured. */
  readonly unmeasured: readonly { readonly where: Corner | AxleName; readonly angle: string }[];
}

/** A plan before it is put in words. */
export type BarePlan = Omit<Plan, 'moves' | 'notes'> & { readonly moves: readonly BareMove[] };

/** How a pose solve ended. */
export interface Verdict {
  readonly converged: boolean;
  /** Largest constraint residual, mm. */
  readonly residual: number;
  readonly iterations: number;
  readonly reason: 'ok' | 'cannot-reach';
}

/** The wheel of one corner at given positions. */
export interface CornerPose {
  readonly reachable: true;
  readonly camber: number;
  readonly toe: number;
  readonly caster?: number;
  readonly sai?: number;
  readonly includedAngle?: number;
  /** Absent where there is no geometry. */
  readonly wheelCentre?: Vec3;
  /** Where every point of the suspension is now. */
  readonly points: Readonly<Record<string, Vec3>>;
  readonly verdict: Verdict;
}
/** No position of the upright satisfies the links: a result, not an exception. */
export interface Unreachable {
  readonly reachable: false;
  /** With what: the adjusters that were given, by id. */
  readonly at: readonly StandsAt[];
  readonly message: string;
  readonly verdict: Verdict;
}

/** The same before it is put in words. */
export type NoPose = Omit<Unreachable, 'message'>;

/** One measurement and where the adjusters stood; `moved` is what was done after it. Immutable, by id. */
export interface Round {
  readonly id?: string;
  /** When, ISO 8601. */
  readonly at?: string;
  /** The round that this one corrects. */
  readonly replaces?: string;
  /** Other corrections of it that were seen and not taken. */
  readonly over?: readonly string[];
  readonly reading: Reading;
  readonly settings: CarSettings;
  /**
   * Adjusters of which nobody knew where they stood: `settings` count them from a place that is not known, the same for all
   * rounds of a visit that list them.
   */
  readonly unknown?: readonly AdjusterRef[];
  /** The shims that were in packs, where they were known. */
  readonly packs?: CarPacks;
  readonly moved?: readonly Moved[];
}
/** One thing done to one adjuster. Immutable, by id. */
export interface Moved extends AdjusterRef {
  readonly id?: string;
  readonly at?: string;
  readonly replaces?: string;
  readonly from: Position;
  readonly to: Position;
  readonly outcome?: 'done' | 'wont-move' | 'set-to';
  /** Of a pack: the shims that it was built of, where they are known. */
  readonly shims?: readonly ShimCount[];
  /** Where it was turned until the rack showed a value. */
  readonly setBy?: SetByRack;
}
/** How a move was set by the rack. What it showed then is a reading of that wheel, as partial as it is. */
export interface SetByRack {
  readonly angle: LiveAngle;
  /** Degrees that it was turned to. */
  readonly value: number;
  /** What the rack then showed of the wheel, as far as it was typed, degrees; of `angle` only where it was not `value`. */
  readonly shown?: Readonly<Partial<Record<LiveAngle, number>>>;
  /** `to` is the plan's guess: one standard deviation of it, in the adjuster's own unit. Absent: `to` was read off it. */
  readonly within?: number;
}
/** A mark that something was deleted, or brought back; the latest holds. See core/records/deletion.ts. */
export interface Deletion {
  /** ISO 8601. */
  readonly at: string;
  /** How many records were known to hang on what was deleted; absent: it was brought back. */
  readonly knew?: number;
}
/** One visit of a car to the rack: its rounds, oldest first. */
export interface Visit {
  readonly id: string;
  readonly carId: string;
  /** ISO 8601. */
  readonly opened: string;
  readonly closed?: string;
  /** Marks that it was deleted, as one that was begun by mistake, or brought back: nothing is planned from a deleted one. */
  readonly deleted?: readonly Deletion[];
  readonly rounds: readonly Round[];
}

/** One plain cause that may account for a reading that is not as predicted. */
export interface Explanation extends Explained {
  /** 0…1; all of them together are 1. */
  readonly probability: number;
  /** One sentence for a person: what it is, why, and what to look at. */
  readonly text: string;
  /** The reading by this cause less what was read, angle by angle, where both were read: in degrees and in sigmas. */
  readonly left: readonly Misfit[];
  /** The records as they would be by this cause; absent where it says nothing of them. */
  readonly correction?: Correction;
}
/** How far one angle is from what is predicted. */
export interface Misfit {
  readonly corner: Corner;
  readonly angle: Angle;
  /** Read − predicted, degrees. */
  readonly by: number;
  /** The same in standard deviations of what the dimensions, the moves and the gauge leave open. */
  readonly sigmas: number;
}
/** What a record would say by a cause: where adjusters stand, or what was read. */
export type Correction =
  | { readonly of: 'moves'; readonly stand: readonly (AdjusterRef & { readonly at: Position })[] }
  | {
      readonly of: 'reading';
      readonly reading: 'before' | 'after';
      readonly values: readonly { readonly corner: Corner; readonly angle: Angle; readonly value: number }[];
    }
  /** The adjuster as it is fitted; for that corner alone. */
  | { readonly of: 'build'; readonly corner: Corner; readonly adjuster: Adjuster };
/** An explanation before it is put in words. */
export type BareExplanation = Omit<Explanation, 'text'>;

/** The file that is exchanged, backed up and given to the terminal command. */
export interface CarFile {
  readonly format: 'cornerwright';
  readonly version: 1;
  readonly car: Car;
  readonly spec?: Spec;
  readonly visits?: readonly Visit[];
}
