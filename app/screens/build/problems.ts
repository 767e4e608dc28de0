/** What is not right on the build card as it stands, asked of the core at every change: each problem is shown at its field. */
import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Refused, Rule } from '../../../core/rule.ts';
import { engine } from '../../engine/index.ts';
import { useAsked } from '../../state/asking.ts';
import { words } from '../../state/words.ts';
import { fileOf } from './car-texts.ts';
import type { Form } from './form.ts';
import { cardUnits } from './numbers.ts';

/** As the core told them last: they stand while it looks at what is typed. */
export const problems = signal<readonly Refused[]>([]);
/** Whether the card was to be saved: what is missing is then as wrong as what is no value. */
export const tried = signal(false);

/** All problems of the card. @throws what is no refusal */
export async function problemsOf(form: Form, options?: Parameters<typeof engine.call>[2]): Promise<readonly Refused[]> {
  const found = await engine.call('problemsOf', [fileOf(form.texts, form.id, form.record)], options);
  return [...found, ...withoutDiameter(form)];
}

/** A car file may leave it out; where toe is a length nothing can be read without. */
const DIAMETER: Rule = { is: 'number', low: 100, high: 2000, unit: 'mm' };
const withoutDiameter = ({ texts }: Form): readonly Refused[] =>
  cardUnits().toe !== 'angle' && !texts['car.wheel.rimDiameter']?.trim()
    ? [{ field: 'car.wheel.rimDiameter', value: undefined, rule: DIAMETER }]
    : [];

export function useProblems(form: Form): void {
  const asked = JSON.stringify([fileOf(form.texts, form.id, form.record), cardUnits().toe]);
  const { value } = useAsked(`problems ${asked}`, (signal) => problemsOf(form, { signal, latest: 'problems' }));
  useEffect(() => {
    if (value) problems.value = value;
  }, [value]);
  useEffect(
    () => () => {
      problems.value = [];
      tried.value = false;
    },
    [form.id],
  );
}

export const isMissing = ({ value }: Refused): boolean =>
  value === undefined || value === null || (typeof value === 'string' && value.trim() === '');

/** Within these paths. */
export const problemsIn = (paths: readonly string[]): readonly Refused[] =>
  problems.value.filter(({ field = '' }) => paths.some((path) => isAt(field, path) || isInside(field, path)));

const isAt = (field: string, path: string): boolean => field === path;
const isInside = (field: string, path: string): boolean => field.startsWith(`${path}[`) || field.startsWith(`${path}.`);

export interface Told {
  readonly message: string;
  /** Nothing is entered yet, and nobody has tried to save: no reason to shout. */
  readonly quiet: boolean;
}

/**
 * What is said at a path; with `inside` also of what lies in it and has no field of its own.
 * @param label what the card calls the field
 */
export function toldAt(path: string, label: string, inside = false): Told | undefined {
  const found = problems.value.find(({ field = '' }) => isAt(field, path) || (inside && isInside(field, path)));
  if (!found?.field) return undefined;
  const quiet = isMissing(found) && !tried.value;
  return { message: messageOf(found, path, label), quiet };
}

function messageOf({ field = '', value, rule }: Refused, path: string, label: string): string {
  // Typed as a length, kept as an angle: the figures of the one say nothing beside the other.
  if (/\.(toe|totalToe)\.(low|aim)$/.test(field) && cardUnits().toe !== 'angle') {
    if (rule.is === 'below-high') return 'It has to be below the upper end.';
    if (rule.is === 'in-window') return 'It has to lie between the two ends.';
  }
  const refused = { value, rule };
  if (field === path) {
    const asked = () => label;
    return isMissing(refused)
      ? words.refusal({ ...refused, field: 'field' }, { asked }, cardUnits())
      : words.refusal(refused, undefined, cardUnits());
  }
  // Which of what lies in it: the rest of the path, behind its own name.
  return words.refusal({ ...refused, field: field.slice(path.lastIndexOf('.') + 1) }, undefined, cardUnits());
}

/** "Wheelbase" of "Wheelbase, mm": what a sentence calls the field. */
export const nameIn = (label: string): string =>
  label.replace(/ \(if any\)/, '').replace(/, (mm|inch|in|degrees|minutes|turns|shims|steps|to 1|(mm|in) a turn)$/, '');
