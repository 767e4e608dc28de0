/**
 * A new car that nobody measured: each axle's layout and its adjusters by their pictures, the windows, and on to its first
 * reading. It fills in the build card, which can be gone on with at any moment.
 */
import { signal } from '@preact/signals';
import type { AxleName } from '../../../core/contract.ts';
import { fitmentsFor } from '../../../core/starters/fitments.ts';
import { tyreOf } from '../../../core/starters/tyre.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { aboutLength } from '../../../core/units/shop.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { go } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { clock, shortDay } from '../../state/days.ts';
import { draft, dropDraft } from '../../state/records.ts';
import { beginVisit } from '../../state/visit-actions.ts';
import { now } from '../../store/index.ts';
import { TextField } from './field.tsx';
import { type Form, formDraft, refuse } from './form.ts';
import { cardUnits, type Texts } from './numbers.ts';
import { tried } from './problems.ts';
import { saved } from './save.ts';
import { Adjusters, Layouts } from './start-pictures.tsx';
import { fittedOn, layoutOf, resized, STEP, TRACK } from './start-texts.ts';
import { activeCell, againTexts, WindowCells, WindowDock } from './start-windows.tsx';

/** Whether a new car is begun by its pictures: from the first, and as long as nobody asked for the whole card. */
export const isStart = ({ id, texts, record }: Form): boolean =>
  !record && (texts[STEP] ? texts[STEP] !== CARD : draft(formDraft(id)) === undefined);
const CARD = 'card';

const STEPS = [
  { id: 'front', title: 'Front axle' },
  { id: 'front-adjusters', title: 'Front adjusters' },
  { id: 'rear', title: 'Rear axle' },
  { id: 'rear-adjusters', title: 'Rear adjusters' },
  { id: 'size', title: 'Name and size' },
  { id: 'windows', title: 'Windows' },
] as const;
type Step = (typeof STEPS)[number]['id'];
/** What comes after a step; what is optional is gone to by its head alone. */
const AFTER: Readonly<Partial<Record<Step, Step>>> = {
  front: 'front-adjusters',
  'front-adjusters': 'rear',
  rear: 'rear-adjusters',
  'rear-adjusters': 'windows',
  size: 'windows',
};
const titleOf = (step: Step): string => STEPS.find(({ id }) => id === step)?.title ?? '';
const stepOf = (texts: Texts): Step => STEPS.find(({ id }) => id === texts[STEP])?.id ?? 'front';

function openStep(form: Form, step: Step, change: Texts = {}): void {
  form.put({ ...change, [STEP]: step });
  requestAnimationFrame(() => document.querySelector('.step-live')?.scrollIntoView({ block: 'start' }));
}

export function StartScreen({ form }: { readonly form: Form }) {
  const { texts } = form;
  const open = stepOf(texts);
  return (
    <div class="screen screen-strip">
      <Header title="New car" back={{ screen: 'cars' }} />
      <Sheet>
        {STEPS.map(({ id, title }) => (
          <PunchedStep
            key={id}
            state={id === open ? 'live' : isFilled(texts, id) ? 'done' : 'later'}
            title={title}
            note={noteOf(texts, id)}
            onPick={() => openStep(form, id)}
          >
            {id === open && <Body form={form} step={id} />}
          </PunchedStep>
        ))}
      </Sheet>
      <Dock form={form} step={open} />
    </div>
  );
}

function isFilled(texts: Texts, step: Step): boolean {
  if (step === 'size') return ['car.label', 'car.wheelbase', 'car.tyres', TRACK].some((path) => texts[path]);
  if (step === 'windows') return hasWindow(texts);
  const axle: AxleName = step.startsWith('front') ? 'front' : 'rear';
  return step.endsWith('adjusters') ? fittedOn(texts, axle).length > 0 : layoutOf(texts, axle) !== undefined;
}

function noteOf(texts: Texts, step: Step): string {
  if (step === 'size') return 'if at hand';
  if (step === 'windows') return '';
  const axle: AxleName = step.startsWith('front') ? 'front' : 'rear';
  const kind = layoutOf(texts, axle) ?? '';
  if (!step.endsWith('adjusters')) return suspensionKinds[kind]?.name ?? '';
  const on = fittedOn(texts, axle);
  return fitmentsFor(kind, axle)
    .filter(({ id }) => on.includes(id))
    .map(({ name }) => name)
    .join('; ');
}

const hasWindow = (texts: Texts): boolean =>
  Object.entries(texts).some(([key, text]) => /^spec\..*\.high$/.test(key) && text !== '');

function Body({ form, step }: { readonly form: Form; readonly step: Step }) {
  if (step === 'size') return <Size form={form} />;
  if (step === 'windows') return <WindowCells form={form} />;
  const axle: AxleName = step.startsWith('front') ? 'front' : 'rear';
  if (step.endsWith('adjusters')) return <Adjusters form={form} axle={axle} />;
  return <Layouts form={form} axle={axle} onPicked={() => openStep(form, `${axle}-adjusters`)} />;
}

/** All of it may be left out: what is known makes the usual layout larger or smaller. */
function Size({ form }: { readonly form: Form }) {
  const { length } = cardUnits();
  const own: Form = { ...form, put: (change) => form.put({ ...change, ...resized({ ...form.texts, ...change }) }) };
  const tyre = tyreOf(form.texts['car.tyres'] ?? '');
  return (
    <>
      <TextField form={form} path="car.label" label="Name" hint="left empty: by the day" />
      <TextField form={form} path="car.plate" label="Plate" />
      <TextField
        form={own}
        path="car.tyres"
        label="Tyre size"
        hint={
          tyre
            ? `wheel centre about ${aboutLength(tyre.loadedRadius, 0, cardUnits())} high`
            : 'as on its wall, such as 205/55R16'
        }
      />
      <TextField form={own} path="car.wheelbase" label={`Wheelbase, ${length}`} mode="decimal" />
      <TextField
        form={own}
        path={TRACK}
        label={`Track, ${length}`}
        hint="between the middles of the tyres; of the front where they differ"
        mode="decimal"
      />
    </>
  );
}

/** Saving takes a moment: one nervous thumb begins one visit. */
const going = signal(false);

async function begin(form: Form): Promise<void> {
  if (going.value) return;
  going.value = true;
  try {
    const label = form.texts['car.label']?.trim() || `Car of ${shortDay(now())}, ${clock(now())}`;
    const record = await saved({ ...form, texts: { ...form.texts, 'car.label': label } });
    go({ screen: 'car', id: record.id }, 'replace');
    go({ screen: 'visit', id: (await beginVisit(record)).id });
  } catch (error) {
    // The card shows what is to be mended, at its field.
    tried.value = true;
    const field = error instanceof Error && 'field' in error ? String(error.field) : '';
    form.put({
      [STEP]: CARD,
      '@open': /^spec\.rear/.test(field) ? 'rear-windows' : /^spec/.test(field) ? 'front-windows' : 'car',
    });
    refuse(error);
  } finally {
    going.value = false;
  }
}

function Dock({ form, step }: { readonly form: Form; readonly step: Step }) {
  const { texts } = form;
  const active = step === 'windows' ? activeCell(texts) : undefined;
  if (active) return <WindowDock form={form} active={active} />;
  const next = AFTER[step];
  const wholeCard = { label: 'The whole card', onPress: () => form.put({ [STEP]: CARD, '@open': 'car' }) };
  if (next) {
    const ready = step === 'size' || isFilled(texts, step) || step.endsWith('adjusters');
    return (
      <ActionBar
        {...(ready && { primary: { label: titleOf(next), onPress: () => openStep(form, next) } })}
        secondary={[wholeCard, ...discarded(form)]}
      />
    );
  }
  const lacking = (['front', 'rear'] as const).find((axle) => layoutOf(texts, axle) === undefined);
  return (
    <ActionBar
      primary={
        lacking
          ? { label: `Pick the ${lacking} axle`, onPress: () => openStep(form, lacking) }
          : hasWindow(texts)
            ? { label: 'Measure it as found', onPress: () => void begin(form), disabled: going.value }
            : { label: 'Type a window', onPress: () => form.put(againTexts(texts)) }
      }
      secondary={[{ label: 'Go through them again', onPress: () => form.put(againTexts(texts)) }, wholeCard]}
    />
  );
}

const sure = signal('');
const askAgain = (id: string): void => {
  sure.value = id;
};
/** A car that was begun by mistake, at a second touch. */
function discarded(form: Form) {
  if (!draft(formDraft(form.id))) return [];
  if (sure.value !== form.id) return [{ label: 'Discard it', onPress: () => askAgain(form.id) }];
  return [
    {
      label: 'Yes, discard it',
      onPress: () => {
        dropDraft(formDraft(form.id));
        go({ screen: 'cars' }, 'replace');
      },
    },
  ];
}
