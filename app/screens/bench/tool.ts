/** What a tool of the bench is: its drawing, its steps with what they ask, and what it makes of that. */
import type { ComponentChildren } from 'preact';
import type { AxleName, Corner } from '../../../core/contract.ts';
import { InputError } from '../../../core/input-error.ts';
import type { Scatter } from '../../../core/measure/instruments.ts';
import type { Measured } from '../../../core/measure/spread.ts';
import { parseLength } from '../../../core/units/length.ts';
import { parseAngle } from '../../../core/units/parse.ts';
import { aboutLength, bareLength, type ShopUnits, wheelAngle } from '../../../core/units/shop.ts';
import type { Handed } from '../../state/bench.ts';
import type { VisitView } from '../../state/visits.ts';

export type Texts = Readonly<Record<string, string>>;

/** One figure that is asked. */
export interface Ask {
  /** As core names it in its refusals, behind what tells one wheel from another. */
  readonly id: string;
  readonly label: string;
  readonly is: 'length' | 'angle' | 'number';
  /** It may be below zero. */
  readonly signed?: true;
  /** It is worked out without. */
  readonly optional?: boolean;
  /** What is taken while nothing is typed. */
  readonly else?: string;
}

/** One of a few. */
export interface Pick {
  readonly id: string;
  readonly legend: string;
  readonly of: readonly (readonly [value: string, label: string])[];
}

export interface Step {
  readonly says: string;
  readonly pick?: Pick;
  /** Rows of figures, each on one line. */
  readonly asks?: readonly (readonly Ask[])[];
  readonly part?: ComponentChildren;
  /** All of it may be passed over. */
  readonly optional?: boolean;
  /** Of a part: whether it has what it is to bring. */
  readonly isDone?: boolean;
}

export interface Line {
  readonly label: string;
  readonly text: string;
  /** How far off it may be, one standard deviation. */
  readonly off?: string;
  /** Read at arm's length. */
  readonly large?: true;
}

export interface Outcome {
  readonly lines: readonly Line[];
  /** What it can tell and what not. */
  readonly says?: readonly string[];
  readonly hands?: readonly Handed[];
  readonly action?: { readonly label: string; readonly onPress: () => void };
  readonly part?: ComponentChildren;
}

export interface Tool {
  readonly id: string;
  readonly title: string;
  readonly Drawing: (props: { readonly at: At }) => ComponentChildren;
  /** Looked at before it is measured. */
  readonly before: readonly string[];
  readonly steps: (at: At) => readonly Step[];
  /** Nothing while figures are missing. @throws InputError with an id of what is asked as its field, or none of them */
  readonly work: (at: At) => Outcome | undefined;
  readonly caution?: string;
}

/** What was typed, and what bears on it. */
export class At {
  constructor(
    readonly texts: Texts,
    readonly units: Required<ShopUnits>,
    readonly scatter: Scatter,
    readonly view: VisitView | undefined,
    readonly put: (change: Texts) => void,
  ) {}

  /** mm; nothing where nothing is typed. @throws InputError */
  length(id: string): number | undefined {
    const text = this.texts[id] ?? '';
    return text.trim() === '' ? undefined : parseLength(text, { unit: this.units.length, field: id });
  }
  /** Degrees. @throws InputError */
  angle(id: string): number | undefined {
    const text = this.texts[id] ?? '';
    if (text.trim() === '') return undefined;
    try {
      return parseAngle(text);
    } catch (error) {
      throw error instanceof InputError ? new InputError(id, text, error.rule) : error;
    }
  }
  /** @throws InputError */
  number(id: string): number | undefined {
    const text = this.texts[id] ?? '';
    if (text.trim() === '') return undefined;
    const value = Number(text.trim().replace('−', '-').replace(',', '.'));
    if (Number.isFinite(value)) return value;
    throw new InputError(id, text, { is: 'finite' });
  }
  read({ id, is }: Ask): number | undefined {
    return is === 'length' ? this.length(id) : is === 'angle' ? this.angle(id) : this.number(id);
  }
  /** All of them, by their names behind the prefix; nothing while one is missing. @throws InputError */
  all<K extends string>(is: Ask['is'], prefix: string, names: readonly K[]): Record<K, number> | undefined {
    const read = names.map((name) => [name, this.read({ id: prefix + name, label: '', is })] as const);
    if (read.some(([, value]) => value === undefined)) return undefined;
    return Object.fromEntries(read) as Record<K, number>;
  }
  /** What was chosen of a few; the first one until something is, or where what is kept is none of them. */
  choice<const T extends string>(id: string, of: readonly [T, ...T[]]): T {
    return of.find((one) => one === this.texts[id]) ?? of[0];
  }
  /** Diameter that was typed, else that of the car's own gauge. @throws InputError */
  diameter(id = 'diameter'): number | undefined {
    return this.length(id) ?? this.view?.car.car.wheel.rimDiameter;
  }
  /** Asks for a diameter, and shows what stands in for it. */
  askDiameter(id: string, label: string): Ask {
    const own = this.view?.car.car.wheel.rimDiameter;
    return { id, label, is: 'length', ...(own && { optional: true, else: bareLength(own, this.units) }) };
  }
  /** An angle with its ±, as a line. */
  angleLine(label: string, { value, sd }: Measured, large?: 'large'): Line {
    const [text, off] = [wheelAngle(value, this.units), wheelAngle(sd, this.units)];
    return { label, text, off, ...(large && { large: true }) };
  }
  lengthLine(label: string, { value, sd }: Measured, large?: 'large'): Line {
    const [text, off] = [aboutLength(value, 1, this.units), aboutLength(sd, 1, this.units)];
    return { label, text, off, ...(large && { large: true }) };
  }
}

/** Calls core, whose refusals name its own fields: those of this form stand behind a prefix. */
export function behind<T>(prefix: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw error instanceof InputError ? new InputError(prefix + error.field, error.value, error.rule) : error;
  }
}

/** Wheels and axles, as a choice names them. */
export const WHEELS = ['LF', 'RF', 'LR', 'RR'] as const satisfies readonly Corner[];
export const AXLE_NAMES = ['front', 'rear'] as const satisfies readonly AxleName[];

export const pickCorner = (of: readonly Corner[] = WHEELS): Pick => ({
  id: 'corner',
  legend: 'Which wheel',
  of: of.map((corner) => [corner, corner] as const),
});
export const pickAxle: Pick = {
  id: 'axle',
  legend: 'Which axle',
  of: [
    ['front', 'Front'],
    ['rear', 'Rear'],
  ],
};
