/** First load. Measured angles typed into the form grid, cell after cell, each digit kept as it is typed. */
import { useEffect, useLayoutEffect } from 'preact/hooks';
import type { Angle } from '../../../core/contract.ts';
import { warmUp } from '../../engine/index.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Card } from '../../parts/card.tsx';
import { Keypad, type KeypadKey } from '../../parts/keypad.tsx';
import type { GridCell } from '../../parts/reading-grid.tsx';
import { Lazy } from '../../shell/lazy.tsx';
import { type Field, fieldsOf, fieldWord, readField, TOE_UNIT, type Typed, unitsOf } from '../../state/fields.ts';
import { formTexts } from '../../state/form.ts';
import { verdictOf, windowOf } from '../../state/judge.ts';
import { alongside } from '../../state/one-window.ts';
import { setUnits, units } from '../../state/preferences.ts';
import { draft, keepDraft } from '../../state/records.ts';
import { entryDraft } from '../../state/stage.ts';
import { isFull, typed } from '../../state/typing.ts';
import { canRead, toeUnitWord, valueText } from '../../state/units.ts';
import { correcting, END, entryForm } from '../../state/visit-actions.ts';
import type { VisitView } from '../../state/visits.ts';
import { wordsLater } from '../../state/words-later.ts';
import { FormGrid } from './form-grid.tsx';

const loadChoice = async () => (await import('./form-choice.tsx')).FormChoice;

interface Props {
  readonly view: VisitView;
  /** What the one big button does once all cells are walked through. */
  readonly actionLabel: string;
  readonly onReady: () => void;
}

/** The entry as it is now: fields, texts and the caret, all from the draft. Asked anew at every key: fast hands outrun a drawing. */
export function entryOf(view: VisitView) {
  const { car } = view.car;
  const form = entryForm(view);
  const fields = fieldsOf(car, form);
  const id = entryDraft(view.visit.id);
  const kept = draft(id);
  const texts = kept?.texts ?? {};
  const cursor = kept?.cursor ?? fields[0]?.id;
  const active = fields.find((field) => field.id === cursor);
  const own = unitsOf(texts, units.value);
  const read = (field: Field) => readField(field, texts[field.id] ?? '', own, car.wheel.rimDiameter);
  // A correction is of the cell that was touched: it does not walk on through the rest.
  const next = (field: Field) => (correcting(view) ? undefined : fields[fields.indexOf(field) + 1]);
  const after = (field: Field): string => next(field)?.id ?? END;
  const put = (next: typeof texts, to?: string) =>
    keepDraft(id, { [TOE_UNIT]: own.toe, ...formTexts(form), ...next }, to);
  return { form, fields, texts, own, active, read, after, put };
}

export function EntryGrid({ view }: { readonly view: VisitView }) {
  const { form, texts, own, active, read, put } = entryOf(view);
  const { car, spec } = view.car;
  const cell = (field: Field): GridCell => {
    const { value, error } = read(field);
    const window = windowOf(spec, field);
    return {
      text: texts[field.id] ?? '',
      refused: error !== undefined,
      ...(value === undefined || !window ? {} : { verdict: verdictOf(value, window) }),
    };
  };
  return (
    <>
      {!active && <Questions view={view} />}
      <FormGrid
        car={car}
        form={form}
        cell={cell}
        active={active?.id}
        onPick={(to) => {
          // Enter on a real keyboard has to mean "next", not the cell again.
          if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
          put(texts, to);
        }}
      />
      <p class="soft grid-foot">
        {units.value.angle === 'degrees' ? 'Degrees' : 'Degrees and minutes'}
        {own.toe === 'angle' ? '' : `, toe in ${toeUnitWord(own.toe)}`}; toe-in is +
      </p>
      <Lazy load={loadChoice} props={{ view }} quiet />
    </>
  );
}

/** The cell being typed stays in sight above the keypad. */
function useActiveInSight(id: string | undefined): void {
  useEffect(() => {
    document.querySelector('.reading-grid-active')?.scrollIntoView({ block: 'center' });
  }, [id]);
}

export function EntryDock({ view, actionLabel, onReady }: Props) {
  const { texts, own, active, fields, read, after, put } = entryOf(view);
  const { car, spec } = view.car;
  useEffect(() => {
    if (spec) warmUp(car, spec);
  }, []);
  const press = (key: KeypadKey | string) => {
    const { texts, own, active, after, put } = entryOf(view);
    // A real keyboard reaches it there too.
    if (!active || alongside.value) return;
    if (key === 'next') put(texts, after(active));
    else if (key === 'skip') put({ ...texts, [active.id]: '' }, after(active));
    else if (key === 'dm') setUnits({ angle: units.value.angle === 'degrees' ? 'degrees-minutes' : 'degrees' });
    else {
      const text = typed(texts[active.id] ?? '', key, own, active.angle);
      const full = key !== '⌫' && key !== '±' && isFull(text, own, active.angle);
      put({ ...texts, [active.id]: text }, full ? after(active) : active.id);
    }
  };
  useOtherCharacters(press, active !== undefined);
  useActiveInSight(active?.id);
  if (!active) {
    const wrong = fields.find((field) => read(field).error !== undefined);
    const empty = fields.every((field) => !texts[field.id]);
    if (wrong || empty) {
      const to = wrong ?? fields[0];
      const label = wrong ? `${fieldWord(wrong)} cannot be read: mend it` : 'Type at least one reading';
      return <ActionBar primary={{ label, onPress: () => put(texts, to?.id) }} />;
    }
    return (
      <ActionBar
        primary={{ label: actionLabel, onPress: onReady, disabled: !canRead(own.toe) }}
        secondary={[{ label: 'Go through them again', onPress: () => put(texts, fields[0]?.id) }]}
      />
    );
  }
  return (
    <Keypad
      onKey={press}
      caption={fieldWord(active)}
      hint={<Hint view={view} field={active} />}
      decimal={units.value.decimal}
      mode={units.value.angle}
      nextLabel={after(active) === END ? 'Done' : 'Next'}
    />
  );
}

/** Asked once all is typed: unlikely values are pointed out, and taken all the same. */
function Questions({ view }: { readonly view: VisitView }) {
  const { fields, read } = entryOf(view);
  const asked = fields.flatMap((field) => {
    const question = questionOf(field, read(field));
    return question ? [{ field, question }] : [];
  });
  if (asked.length === 0) return null;
  return (
    <Card tone="caution" title="Worth a second look">
      <ul role="status">
        {asked.map(({ field, question }) => (
          <li key={field.id}>
            {field.where}: {question}
          </li>
        ))}
      </ul>
    </Card>
  );
}

function questionOf({ angle }: Field, { unusual }: Typed): string | undefined {
  if (!unusual) return undefined;
  const question = (of: Angle): string => wordsLater()?.unusual(of, unusual.value, unusual.usual) ?? '…';
  return angle === 'totalToe' ? `Each wheel: ${question('toe')}` : question(angle as Angle);
}

/** What is wanted in the field, or why what is typed there is no value, or whether an unlikely one is right. */
function Hint({ view, field }: { readonly view: VisitView; readonly field: Field }) {
  const { texts, own, read } = entryOf(view);
  const { car, spec } = view.car;
  const typed = read(field);
  const { error } = typed;
  const question = questionOf(field, typed);
  if (error) {
    return (
      <span role="alert" class="wrong">
        {wordsLater()?.refusal({ value: texts[field.id], rule: error })}
      </span>
    );
  }
  if (question) return <span role="status">{question}</span>;
  if (field.angle === 'steeringWheel') return <>degrees off, + to the right</>;
  const window = windowOf(spec, field);
  const show = (value: number) => valueText(field.angle, value, car.wheel.rimDiameter, own.toe);
  return window ? (
    <>
      window {show(window.low)} to {show(window.high)}
    </>
  ) : null;
}

/** Letters of a real keyboard are kept as typed and refused in words; the pad itself takes the digits. */
function useOtherCharacters(press: (key: string) => void, on: boolean): void {
  // Before the first paint: a digit is typed as soon as the field is seen.
  useLayoutEffect(() => {
    if (!on) return;
    const onType = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || !/^[^0-9.,°+\-− ]$/u.test(event.key)) return;
      if (event.target instanceof HTMLElement && event.target.closest('input, textarea, select')) return;
      press(event.key);
    };
    document.addEventListener('keydown', onType);
    return () => document.removeEventListener('keydown', onType);
  });
}
