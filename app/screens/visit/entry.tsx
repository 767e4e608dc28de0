/** Measured angles typed into the form grid, cell after cell, each digit kept as it is typed. */
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { warmUp } from '../../engine/index.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { cellInSight } from '../../parts/cell-in-sight.ts';
import { Keypad, type KeypadKey } from '../../parts/keypad.tsx';
import type { GridCell } from '../../parts/reading-grid.tsx';
import { Lazy } from '../../shell/lazy.tsx';
import { entryOf, moreDecimals, pickCell, pressKey, questionOf, showDecimals } from '../../state/entry.ts';
import { type Field, fieldsOf, fieldWord, isTape } from '../../state/fields.ts';
import { formOf } from '../../state/form.ts';
import { verdictOf, windowOf } from '../../state/judge.ts';
import { alongside } from '../../state/one-window.ts';
import { live, units } from '../../state/preferences.ts';
import { draft } from '../../state/records.ts';
import { entryDraft } from '../../state/stage.ts';
import { END, GRACE, isFraction, skipKey, type Word } from '../../state/typing.ts';
import { canRead, canReadLengths, toeUnitWord, valueText } from '../../state/units.ts';
import { entryForm } from '../../state/visit-actions.ts';
import type { VisitView } from '../../state/visits.ts';
import { wordsLater } from '../../state/words-later.ts';
import { DecimalsQuestion } from './decimals.tsx';
import { FormGrid } from './form-grid.tsx';

const loadApart = async () => (await import('../../shell/typed-apart.tsx')).TypedApart;
const loadQuestions = async () => (await import('./questions.tsx')).Questions;
const loadVerdict = async () => (await import('./questions.tsx')).TypedVerdict;
const loadChoice = async () => (await import('./form-choice.tsx')).FormChoice;

interface Props {
  readonly view: VisitView;
  /** What the one big button does once all cells are walked through. */
  readonly actionLabel: string;
  readonly onReady: () => void;
}

/** What was typed for this reading on another phone too. */
export function EntryApart({ view }: { readonly view: VisitView }) {
  const id = entryDraft(view.visit.id);
  if (!draft(id)?.versions) return null;
  const differs = (here: Texts, there: Texts): readonly string[] =>
    fieldsOf(view.car.car, formOf(there, entryForm(view)))
      .filter((field) => there[field.id] && there[field.id] !== here[field.id])
      .map((field) => `${fieldWord(field)} ${there[field.id]}, here ${here[field.id] || 'empty'}`);
  return <Lazy load={loadApart} props={{ id, differs }} quiet />;
}
type Texts = Readonly<Record<string, string>>;

export function EntryGrid({ view }: { readonly view: VisitView }) {
  const { form, texts, own, active, typing, read } = entryOf(view);
  const { car, spec } = view.car;
  const cell = (field: Field): GridCell => {
    const { value, error } = read(field);
    const window = windowOf(spec, field);
    return {
      text: texts[field.id] ?? '',
      refused: error !== undefined,
      skipped: texts[skipKey(field.id)] === 'yes',
      fresh: typing.fresh === true,
      ...(value === undefined || !window ? {} : { verdict: verdictOf(value, window) }),
    };
  };
  return (
    <>
      <EntryApart view={view} />
      {!active && <Lazy load={loadQuestions} props={{ view }} quiet />}
      <DecimalsQuestion view={view} />
      <FormGrid
        car={car}
        form={form}
        cell={cell}
        active={active?.id}
        onPick={(to) => {
          // Enter on a real keyboard has to mean "next", not the cell again.
          if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
          pickCell(view, to);
        }}
      />
      <p class="soft grid-foot">
        {units.value.angle === 'degrees' ? 'Degrees' : 'Degrees and minutes'}
        {own.toe === 'angle' ? '' : `, toe in ${toeUnitWord(own.toe)}`}; toe-in is +
        {units.value.toe !== 'angle' &&
          car.wheel.rimDiameter === undefined &&
          '. Toe as an angle: this car’s build has no diameter at which it would be a length'}
      </p>
      {!active && <Lazy load={loadVerdict} props={{ view }} quiet />}
      <Lazy load={loadChoice} props={{ view }} quiet />
    </>
  );
}

/** ms after which a hand that types is at it: the first touches of a slow phone are not to wait for a rehearsal. */
const AT_EASE = 1500;

export function EntryDock({ view, actionLabel, onReady }: Props) {
  const { texts, own, active, taken, from, fields, pad, read } = entryOf(view);
  const { car, spec } = view.car;
  useEffect(() => {
    if (!spec) return;
    const timer = setTimeout(() => warmUp(car, spec, live.value.angles), AT_EASE);
    return () => clearTimeout(timer);
  }, []);
  const [lingers, setLingers] = useState(false);
  const onKey = (key: KeypadKey | string, at: number, by: 'touch' | 'keyboard') => {
    // A real keyboard reaches it there too.
    if (alongside.value) return;
    pressKey(view, key, at);
    // A thumb that goes on after the last digit is to find the pad under it, not what comes in its place.
    setLingers(by === 'touch');
  };
  useOtherCharacters(onKey, active !== undefined);
  useEffect(() => cellInSight({ least: fields.every(({ id }) => !texts[id]) }), [active?.id]);
  useEffect(() => {
    if (active || !lingers) return;
    const timer = setTimeout(() => setLingers(false), GRACE);
    return () => clearTimeout(timer);
  });
  const shown = active ?? (lingers ? (from ?? fields.at(-1)) : undefined);
  if (!shown) {
    const wrong = fields.find((field) => read(field).error !== undefined);
    const empty = fields.every((field) => !texts[field.id]);
    const byTape = fields.some(({ angle }) => isTape(angle));
    if (wrong || empty) {
      const to = wrong ?? fields[0];
      const label = wrong ? `${fieldWord(wrong)} cannot be read: mend it` : 'Type at least one reading';
      return <ActionBar primary={{ label, onPress: () => pickCell(view, to?.id ?? END) }} />;
    }
    return (
      <ActionBar
        primary={{
          label: actionLabel,
          onPress: onReady,
          disabled: !canRead(own.toe) || (byTape && !canReadLengths()),
        }}
        secondary={[{ label: 'Go through them again', onPress: () => pickCell(view, fields[0]?.id ?? END) }]}
      />
    );
  }
  return (
    <Keypad
      onKey={onKey}
      echo={taken && <Taken view={view} field={taken} />}
      caption={fieldWord(shown)}
      value={texts[shown.id] ?? ''}
      hint={active && <Hint view={view} field={active} />}
      decimal={units.value.decimal}
      mode={units.value.angle}
      fraction={isFraction(own, shown.angle)}
      nextLabel={pad.alone || shown === fields.at(-1) ? 'Done' : 'Next'}
    />
  );
}

/** What was taken just now, by its wheel: whether it is what the rack shows, and whether it is likely. */
function Taken({ view, field }: { readonly view: VisitView; readonly field: Field }) {
  const { texts, read } = entryOf(view);
  const question = questionOf(view, field);
  const more = moreDecimals(view, field);
  return (
    <>
      {fieldWord(field)} <strong>{texts[field.id]}</strong> {read(field).error ? 'cannot be read' : 'taken'}
      {question && <span class="keypad-asks">{question}</span>}
      {more && (
        <button
          type="button"
          class="keypad-offer"
          aria-label={`The rack shows ${more} decimals`}
          onClick={() => showDecimals(view, field, more)}
        >
          {more} decimals?
        </button>
      )}
    </>
  );
}

/** Why a key did not do what it does mostly. */
function wordOf(word: Word, field: Field, from: Field | undefined): string {
  const name = fieldWord(field);
  if (word === 'empty') return `Empty: type ${name}, or Skip`;
  if (word === 'not-empty') return 'It has a figure: rub it out to skip it';
  return `Was that a decimal of ${from ? fieldWord(from) : 'the last figure'}? Next takes it as ${name}.`;
}

/** What is wanted in the field, or why what is typed there is no value, or whether an unlikely one is right. */
function Hint({ view, field }: { readonly view: VisitView; readonly field: Field }) {
  const { texts, own, from, typing, read } = entryOf(view);
  const { car, spec } = view.car;
  const typed = read(field);
  const word = typing.word && wordOf(typing.word, field, from);
  if (word) return <span role="alert">{word}</span>;
  const { error } = typed;
  const question = questionOf(view, field);
  if (error) {
    return (
      <span role="alert" class="wrong">
        {wordsLater()?.refusal({ value: texts[field.id], rule: error }, undefined, units.value)}
      </span>
    );
  }
  if (question) return <span role="status">{question}</span>;
  if (field.angle === 'steeringWheel') return <>degrees off, + to the right</>;
  if (field.angle === 'rideHeight') return <>{own.length}, where the maker has it taken</>;
  if (field.angle === 'lateral') return <>{own.length}, + to the left</>;
  const window = windowOf(spec, field);
  const show = (value: number) => valueText(field.angle, value, car.wheel.rimDiameter, own.toe);
  return window ? (
    <>
      window {show(window.low)} to {show(window.high)}
    </>
  ) : null;
}

/** Letters of a real keyboard are kept as typed and refused in words; the pad itself takes the digits. */
function useOtherCharacters(press: (key: string, at: number, by: 'keyboard') => void, on: boolean): void {
  // Before the first paint: a digit is typed as soon as the field is seen.
  useLayoutEffect(() => {
    if (!on) return;
    const onType = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || !/^[^0-9.,°+\-− ]$/u.test(event.key)) return;
      if (event.target instanceof HTMLElement && event.target.closest('input, textarea, select')) return;
      press(event.key, event.timeStamp, 'keyboard');
    };
    document.addEventListener('keydown', onType);
    return () => document.removeEventListener('keydown', onType);
  });
}
