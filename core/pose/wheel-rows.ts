/** The constraint rows that hold one wheel: its links, seats, lines and height. */
import type { Suspension, Vec3 } from '../contract.ts';
import { cross, distance, normalised, sub } from '../geometry/vector.ts';
import { linksOf } from '../suspension/joints.ts';
import type { SuspensionKind } from '../suspension/kind.ts';
import { DISTANCE, HEIGHT, type HeldRow, LINE, ROW_SIZE, type RowType } from './rows.ts';
import { CENTRE, outboardOf, turned, type Wheel } from './wheel.ts';

/** A linkage that is being written: the rows of all its wheels, and their parameters. */
export interface Draft {
  readonly params: number[];
  readonly rows: HeldRow[];
  /** The body's origin. */
  readonly home: Vec3;
}

/** A wheel but for where its angles and its body stand in the whole. */
export type HeldWheel = Omit<Wheel, 'angles' | 'body'>;

type Ends = HeldRow['ends'];

/** Writes the rows that hold one wheel to the end of a draft. */
export function holdWheel(kind: SuspensionKind, suspension: Suspension, side: number, draft: Draft): HeldWheel {
  const { seats = [], lines = [], clamped = false } = kind;
  // What an axle has once is held with its left side; what joins two knuckles, once both are there.
  const { once: ofAxle = [], knuckles } = kind.rigidAxle ?? {};
  const once = side === 0 && !knuckles ? [] : ofAxle;
  const links = linksOf(kind, suspension.points).filter(([inner]) => !once.includes(inner));
  const onBody = new Set([...seats, ...links.map(([inner]) => inner), ...lines.map(([body]) => body)]);
  const rows = new WheelRows(draft, suspension, side, onBody);
  for (const link of links) rows.link(link);
  for (const seat of seats) rows.seat(seat);
  for (const line of lines) rows.line(line, clamped);
  if (kind.height) rows.atHeight();
  return rows.wheel;
}

class WheelRows {
  readonly #slots = new Map<string, number[]>();
  readonly #onUpright = new Set<string>([CENTRE]);
  readonly #lengths = new Map<string, number>();
  readonly #normals: number[] = [];
  #height: number | undefined;
  readonly #outboard: 1 | -1;

  constructor(
    private readonly draft: Draft,
    private readonly suspension: Suspension,
    private readonly side: number,
    /** Points of the car's body; a seat has one of that name there too. */
    private readonly onBody: ReadonlySet<string>,
  ) {
    this.#outboard = outboardOf(side);
  }

  /** What was written, and where. */
  get wheel(): HeldWheel {
    const height = this.#height;
    return {
      suspension: this.suspension,
      outboard: this.#outboard,
      slots: this.#slots,
      onUpright: this.#onUpright,
      lengths: this.#lengths,
      normals: this.#normals,
      ...(height !== undefined && { height }),
    };
  }

  link(ends: Ends): void {
    const [inner, outer] = ends;
    this.#row(DISTANCE, ends, () => {
      this.#place(inner, this.#point(inner));
      this.#upright(outer);
      this.#lengths.set(inner, this.draft.params.length);
      this.draft.params.push(distance(this.#point(inner), this.#point(outer)));
    });
  }

  /** A point that stays where it is along each axis. */
  seat(name: string): void {
    for (const axis of AXES) {
      this.#row(LINE, [name, name], () => {
        this.#place(name, this.#point(name));
        this.#upright(name);
        this.draft.params.push(...axis);
      });
    }
  }

  /** @param clamped whether its normals may be turned */
  line(ends: Ends, clamped: boolean): void {
    const [body, through] = ends;
    for (const normal of squareTo(normalised(sub(this.#point(body), this.#point(through))))) {
      this.#row(LINE, ends, () => {
        this.#place(body, this.#point(body));
        this.#upright(through);
        if (clamped) this.#normals.push(this.draft.params.length);
        this.draft.params.push(...normal);
      });
    }
  }

  atHeight(): void {
    this.#row(HEIGHT, [CENTRE, CENTRE], () => {
      this.#place(CENTRE, this.#arm(CENTRE));
      this.#height = this.draft.params.length;
      this.draft.params.push(this.#point(CENTRE)[2]);
    });
  }

  #row(type: RowType, ends: Ends, write: () => void): void {
    const { params, rows } = this.draft;
    const at = params.length;
    write();
    if (params.length !== at + ROW_SIZE[type]) throw new Error('a constraint row does not fill its parameters');
    rows.push({ type, at, side: this.side, ends });
  }

  /** In the body's frame. */
  #point(name: string): Vec3 {
    return turned(this.suspension.points[name]!, this.#outboard);
  }

  #arm(name: string): Vec3 {
    return sub(this.#point(name), this.draft.home);
  }

  #place(name: string, coordinates: Vec3): void {
    const slots = this.#slots.get(name) ?? [];
    slots.push(this.draft.params.length);
    this.#slots.set(name, slots);
    this.draft.params.push(...coordinates);
  }

  /** A point of the upright. One that sits in a seat is moved by its seat, so that its own place stays as it was. */
  #upright(name: string): void {
    if (this.onBody.has(name)) {
      this.draft.params.push(...this.#arm(name));
      return;
    }
    this.#onUpright.add(name);
    this.#place(name, this.#arm(name));
  }
}

/** Two unit vectors square to `axis` and to each other. */
function squareTo(axis: Vec3): [Vec3, Vec3] {
  const helper: Vec3 = Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const first = normalised(cross(axis, helper));
  return [first, cross(axis, first)];
}

const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
