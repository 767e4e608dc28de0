/** The car's build card: what it is, how each axle is made, what adjusts it, and its windows. Saved once the core agrees. */
import './build.css';
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { ActionBar } from '../../parts/action-bar.tsx';
import { PunchedStep, type PunchedStepProps } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { TypedApart } from '../../shell/typed-apart.tsx';
import { draft, dropDraft } from '../../state/records.ts';
import { why } from '../../state/why.ts';
import { AdjustersSection } from './adjusters.tsx';
import { startPath } from './axle-start.ts';
import { fileOf, textsOf } from './car-texts.ts';
import { CopyFrom } from './copy.tsx';
import { KeptBuilds } from './earlier.tsx';
import { TextField } from './field.tsx';
import { type Form, formDraft, refusal, refuse, stray, undoOf, useForm } from './form.ts';
import { ImportButton } from './import.tsx';
import { cardUnits, type Texts } from './numbers.ts';
import { isMissing, problemsIn, tried, useProblems } from './problems.ts';
import { saved } from './save.ts';
import { isStart, StartScreen } from './start.tsx';
import { SuspensionSection } from './suspension.tsx';
import { WindowsSection } from './windows.tsx';

const SECTIONS: readonly {
  readonly id: string;
  readonly title: string;
  /** Errors of these paths are shown in it. */
  readonly paths: readonly string[];
  readonly body: (form: Form) => ComponentChildren;
}[] = [
  {
    id: 'car',
    title: 'The car',
    paths: [
      'car.label',
      'car.plate',
      'car.customer',
      'car.vin',
      'car.tyres',
      'car.notes',
      'car.wheel',
      'car.wheelbase',
      'car.steeringRatio',
      'spec.toeDiameter',
    ],
    body: (form) => <CarSection form={form} />,
  },
  ...(['front', 'rear'] as const).flatMap((axle) => {
    const name = axle === 'front' ? 'Front' : 'Rear';
    return [
      {
        id: `${axle}-suspension`,
        title: `${name} suspension`,
        paths: [`car.${axle}.suspension`, `car.${axle}.rightSuspension`, `car.${axle}.steered`, startPath(axle)],
        body: (form: Form) => <SuspensionSection form={form} axle={axle} />,
      },
      {
        id: `${axle}-adjusters`,
        title: `${name} adjusters`,
        paths: [`car.${axle}.adjusters`, `car.${axle}.rightAdjusters`],
        body: (form: Form) => <AdjustersSection form={form} axle={axle} />,
      },
      {
        id: `${axle}-windows`,
        title: `${name} windows`,
        paths: [`spec.${axle}`],
        body: (form: Form) => <WindowsSection form={form} axle={axle} />,
      },
    ];
  }),
];

export function BuildScreen() {
  const form = useForm(route.value.screen === 'build' ? route.value.id : '');
  return isStart(form) ? <StartScreen form={form} /> : <CardScreen form={form} />;
}

function CardScreen({ form }: { readonly form: Form }) {
  const { id } = form;
  useProblems(form);
  const [sure, setSure] = useState(false);
  const open = form.texts['@open'] ?? 'car';
  const at = SECTIONS.findIndex((one) => one.id === open);
  const next = SECTIONS[at + 1];
  const changed =
    draft(formDraft(id)) !== undefined && form.record !== undefined && isChanged(form.texts, textsOf(form.record));
  const back = form.record ? ({ screen: 'car', id } as const) : ({ screen: 'cars' } as const);
  return (
    <div class="screen screen-strip">
      <Header title={form.record ? `${form.record.car.label}: build` : 'New car'} back={back} />
      <Sheet>
        <TypedApart id={formDraft(id)} differs={sectionsApart} />
        {SECTIONS.map(({ id: section, title, paths, body }) => (
          <PunchedStep
            key={section}
            {...stateOf(form, paths, section === open)}
            title={title}
            onPick={() => form.put({ '@open': section === open ? '' : section })}
          >
            {section === open && (
              <>
                <UndoNote form={form} paths={paths} />
                {body(form)}
              </>
            )}
          </PunchedStep>
        ))}
        {stray.value && refusal.value && (
          <p class="wrong stray" role="alert">
            Not saved. {why(refusal.value, fileOf(form.texts, form.id, form.record))}
          </p>
        )}
      </Sheet>
      <ActionBar
        primary={
          next && at >= 0
            ? { label: next.title, onPress: () => openSection(form, next.id) }
            : { label: 'Save the car', onPress: () => void save(form) }
        }
        secondary={[
          ...(next && at >= 0 ? [{ label: 'Save the car', onPress: () => void save(form) }] : []),
          ...(changed ? [{ label: 'Undo the changes', onPress: () => dropDraft(formDraft(id)) }] : []),
          ...(!form.record && draft(formDraft(id))
            ? [
                sure
                  ? { label: 'Yes, discard it', onPress: () => discard(id) }
                  : { label: 'Discard the draft', onPress: () => setSure(true) },
              ]
            : []),
        ]}
      />
    </div>
  );
}

/** The sections in which two cards differ. */
const sectionsApart = (here: Texts, there: Texts): readonly string[] =>
  SECTIONS.filter(({ paths }) =>
    [...Object.keys(here), ...Object.keys(there)].some(
      (key) => here[key] !== there[key] && paths.some((path) => key.startsWith(path)),
    ),
  ).map(({ title }) => title);

/** A car that was begun by mistake: its draft goes, at a second touch, as nothing brings it back. */
function discard(id: string): void {
  dropDraft(formDraft(id));
  go({ screen: 'cars' }, 'replace');
}

/** What was filled in at one touch goes back at one touch. */
function UndoNote({ form, paths }: { readonly form: Form; readonly paths: readonly string[] }) {
  const last = undoOf(form.texts);
  // Copying is done in the first section, where the paths are no part of what it shows.
  const here =
    paths.includes('car.label') ||
    last?.under.some((one) => paths.some((path) => path.startsWith(one) || one.startsWith(path)));
  if (!last || !here) return null;
  return (
    <div class="undo" role="status">
      <span>{last.says}.</span>
      <button type="button" class="quiet" onClick={form.undo}>
        Undo
      </button>
    </div>
  );
}

/** Whether anything but the open section differs from the record. */
function isChanged(texts: Texts, before: Texts): boolean {
  const keys = new Set([...Object.keys(texts), ...Object.keys(before)]);
  return [...keys].filter((key) => !key.startsWith('@')).some((key) => (texts[key] ?? '') !== (before[key] ?? ''));
}

function openSection(form: Form, id: string): void {
  form.put({ '@open': id });
  requestAnimationFrame(() => document.querySelector('.step-live')?.scrollIntoView({ block: 'start' }));
}

function CarSection({ form }: { readonly form: Form }) {
  return (
    <>
      <TextField form={form} path="car.label" label="Name" hint="make, model, colour: how you would ask for it" />
      <TextField form={form} path="car.plate" label="Plate" />
      {cardUnits().toe !== 'angle' && (
        <>
          <TextField
            form={form}
            path="car.wheel.rimDiameter"
            label={`Diameter at which toe is a length, ${cardUnits().length}`}
            hint="the rim’s outer edge, or where your gauge touches"
            mode="decimal"
          />
          <TextField
            form={form}
            path="spec.toeDiameter"
            label={`Diameter of the maker’s toe figures, ${cardUnits().length}`}
            hint="left empty: the same. The windows are typed as the maker prints them, and shown as your gauge reads"
            mode="decimal"
          />
        </>
      )}
      <TextField
        form={form}
        path="car.steeringRatio"
        label="Steering ratio, to 1"
        hint="as the maker gives it, such as 16; it says how far the steering wheel stands off. May be left empty"
        mode="decimal"
      />
      <TextField
        form={form}
        path="car.wheelbase"
        label={`Wheelbase, ${cardUnits().length}`}
        hint="if known: it says how far the body pitches at another ride height"
        mode="decimal"
      />
      <details class="for-the-sheet">
        <summary>For the customer’s sheet, if wanted</summary>
        <TextField form={form} path="car.customer" label="Customer" />
        <TextField form={form} path="car.vin" label="VIN" />
        <TextField form={form} path="car.tyres" label="Tyres and pressures" />
      </details>
      <TextField form={form} path="car.notes" label="Notes" />
      <CopyFrom form={form} />
      {form.record ? <KeptBuilds record={form.record} /> : <ImportButton />}
    </>
  );
}

/** A step is filled where there is something in it and nothing to mend. */
function stateOf(form: Form, paths: readonly string[], isOpen: boolean): Pick<PunchedStepProps, 'state' | 'note'> {
  const here = problemsIn(paths);
  const missing = here.filter(isMissing).length;
  const wrong = here.length - missing;
  const notes = [...(wrong > 0 ? [`${wrong} to mend`] : []), ...(missing > 0 ? [`${missing} missing`] : [])];
  const filled = Object.entries(form.texts).some(
    ([key, text]) =>
      text !== '' && !/\.(right|rightList|sides|way)$/.test(key) && paths.some((path) => key.startsWith(path)),
  );
  const note = notes.join(', ') || (filled ? '' : 'nothing yet');
  return {
    state: isOpen ? 'live' : here.length === 0 && filled ? 'done' : 'later',
    ...(note && { note }),
  };
}

/** The core checks the whole card; a problem opens the section that it is in, and nothing is lost. */
async function save(form: Form): Promise<void> {
  try {
    await saved(form);
    go({ screen: 'car', id: form.id }, 'replace');
  } catch (error) {
    tried.value = true;
    const field = error instanceof Error && 'field' in error ? String(error.field) : '';
    const section = SECTIONS.find(({ paths }) => paths.some((path) => field.startsWith(path)));
    if (section) form.put({ '@open': section.id, ...adjusterAt(field) });
    refuse(error);
  }
}

/** Opens the adjuster that a problem is in. */
function adjusterAt(field: string): Texts {
  const [path] = /^car\.(front|rear)\.(adjusters|rightAdjusters)\[\d+\]/.exec(field) ?? [];
  return path ? { '@adjuster': path } : {};
}
