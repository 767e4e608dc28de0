/** A tool: how it is held, what to do step by step, what comes of it and where that goes. */

import { type ComponentType, Fragment } from 'preact';
import { useState } from 'preact/hooks';
import type { Car } from '../../../core/contract.ts';
import { InputError } from '../../../core/input-error.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Card } from '../../parts/card.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { go } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import {
  benchLength,
  benchTexts,
  clearBench,
  type Handed,
  handOver,
  scatter,
  typeAtBench,
  typedForAnother,
  visitsToHandTo,
} from '../../state/bench.ts';
import { alongside, useOneWindow } from '../../state/one-window.ts';
import { units } from '../../state/preferences.ts';
import { records } from '../../state/records.ts';
import { type VisitView, visitView } from '../../state/visits.ts';
import { words } from '../../state/words.ts';
import { Choice, Row } from './fields.tsx';
import { statesOf } from './guide.ts';
import { At, type Outcome, type Texts, type Tool } from './tool.ts';

interface Props {
  readonly visit: string;
}

export const screenOf = (tool: Tool): ComponentType<Props> =>
  function ToolScreen({ visit }: Props) {
    return <Opened key={visit} tool={tool} visit={visit} />;
  };

function Opened({ tool, visit }: Props & { readonly tool: Tool }) {
  const view = visitView(records.value, visit);
  const own = { ...units.value, length: benchLength(tool.id) };
  const put = (change: Texts) => typeAtBench(tool.id, change, visit);
  const at = new At(benchTexts(tool.id), own, scatter.value, view, put);
  const { outcome, refused } = workedOut(tool, at);
  const steps = tool.steps(at);
  const asked = steps.flatMap(({ asks = [] }) => asks.flat());
  const states = statesOf(at.texts, steps, outcome !== undefined);
  const isBeside = refused && asked.some(({ id }) => id === refused.field);
  const other = typedForAnother(tool.id, visit);
  return (
    <div class="screen">
      <Header title={tool.title} plate={view?.car.car.plate} back={{ screen: 'bench', tool: '', visit }} />
      {view && <Held visit={visit} />}
      <Sheet>
        <PunchedStep state="done" title="How it is held">
          <div class="bench-drawing">
            <tool.Drawing at={at} />
          </div>
          <ul class="bench-before">
            {tool.before.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
          {tool.caution && <p class="caution-line">{tool.caution}</p>}
          {other && (
            <Card tone="caution" title={`Typed for ${other}`}>
              These figures are of another job: start afresh, or type over them.
            </Card>
          )}
        </PunchedStep>
        {steps.map(({ says, pick, asks = [], part }, i) => (
          <PunchedStep key={String(i)} state={states.steps[i]!} title={`${i + 1}. ${says}`}>
            {pick && <Choice at={at} pick={pick} />}
            {asks.map((row) => (
              <Row key={row.map(({ id }) => id).join(' ')} at={at} asks={row} refused={refused} />
            ))}
            {part}
          </PunchedStep>
        ))}
        <PunchedStep state={states.result} title="What it shows">
          {refused && !isBeside && (
            <p class="wrong" role="alert">
              {words.refusal({ value: refused.value, rule: refused.rule }, undefined, at.units)}
            </p>
          )}
          {outcome ? (
            <Shown outcome={outcome} />
          ) : (
            <p class="soft">{refused ? 'Mend what is marked.' : 'Type the figures of the steps above.'}</p>
          )}
        </PunchedStep>
      </Sheet>
      <Dock tool={tool} visit={visit} outcome={outcome} />
    </div>
  );
}

/** The visit is live here while its tool is open, as results are written into it. */
function Held({ visit }: Props) {
  useOneWindow(visit);
  return null;
}

function workedOut(tool: Tool, at: At): { readonly outcome?: Outcome | undefined; readonly refused?: InputError } {
  try {
    return { outcome: tool.work(at) };
  } catch (error) {
    if (error instanceof InputError) return { refused: error };
    throw error;
  }
}

function Shown({ outcome: { lines, says = [], part, hands } }: { readonly outcome: Outcome }) {
  return (
    <>
      <dl class="bench-lines">
        {lines.map(({ label, text, off, large }) => (
          <Fragment key={label}>
            <dt>{label}</dt>
            <dd class={large ? 'bench-large' : ''}>
              {text}
              {off && (
                <>
                  {' '}
                  <span class="bench-off">± {off}</span>
                </>
              )}
            </dd>
          </Fragment>
        ))}
      </dl>
      {part}
      {lines.some(({ off }) => off) && <p class="soft">Two readings in three lie within the ±.</p>}
      {says.map((one) => (
        <p key={one}>{one}</p>
      ))}
      {hands && hands.length > 0 && visitsToHandTo('').length === 0 && (
        <p class="soft">No visit is open: begin one on its car, and open the bench there.</p>
      )}
    </>
  );
}

/** The result in one line, above what can be done with it: the steps are long. */
function Headline({ outcome: { lines } }: { readonly outcome: Outcome }) {
  const large = lines.filter(({ large }) => large);
  if (large.length === 0) return null;
  return (
    <p class="bench-headline">
      {large.map(({ label, text }) => (
        <span key={label}>
          {label} <strong>{text}</strong>
        </span>
      ))}
    </p>
  );
}

/** On a button a long name gives way to the plate. */
const shortName = ({ label, plate }: Car): string => (plate && label.length > LONG_NAME ? plate : label);
const LONG_NAME = 20;

function Dock({ tool, visit, outcome }: Props & { readonly tool: Tool; readonly outcome: Outcome | undefined }) {
  const [lost, setLost] = useState('');
  const { hands = [], action } = outcome ?? {};
  const to = hands.length > 0 && !alongside.value ? visitsToHandTo(visit) : [];
  const hand = (view: VisitView, results: readonly Handed[]) => {
    const none = handOver(view, results);
    if (none.length === results.length) setLost(view.car.car.label);
    else go({ screen: 'visit', id: view.visit.id });
  };
  const into = to.map((view) => ({
    label: `Into the visit of ${shortName(view.car.car)}`,
    onPress: () => hand(view, hands),
  }));
  const back = { label: visit ? 'All tools' : 'To the bench', onPress: () => go({ screen: 'bench', tool: '', visit }) };
  const [gone, setGone] = useState<Texts | undefined>();
  const texts = benchTexts(tool.id);
  const isEmpty = Object.keys(texts).length === 0;
  const clear = () => {
    setGone(texts);
    clearBench(tool.id);
  };
  const afresh =
    isEmpty && gone
      ? { label: 'Bring it back', onPress: () => typeAtBench(tool.id, gone, visit) }
      : { label: 'Start afresh', onPress: clear, disabled: isEmpty };
  const [first, ...more] = [...(action ? [action] : []), ...into];
  return (
    <>
      {lost && <p role="alert" class="note-bar note-bad">{`The form of ${lost} has no place for it.`}</p>}
      {alongside.value && (
        <p role="status" class="note-bar">
          This visit is open in another window: results go in there.
        </p>
      )}
      <ActionBar
        note={outcome && <Headline outcome={outcome} />}
        primary={first ?? back}
        secondary={[...more, ...(first ? [back] : []), afresh].slice(0, 3)}
      />
    </>
  );
}
