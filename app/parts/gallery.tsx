/** Long, as every part stands here once. For the makers, not in the build: every part on invented cars. `gallery.html?scene=moves&theme=dark`,
 * `scene=drawings&kind=slide`, `scene=build&kind=strut`. */
import { wordsOf } from '../../core/words/catalogue.ts';
import '../style/index.css';
import { render } from 'preact';
import { useState } from 'preact/hooks';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { reachOf } from '../../core/ask/reach-of.ts';
import type { Adjuster, Axle, Corner, Position } from '../../core/contract.ts';
import { doubleWishboneFront } from '../../core/starters/double-wishbone.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import { ActionBar } from './action-bar.tsx';
import { AdjusterDrawing, type ShimCount } from './adjuster-drawing.tsx';
import { Card } from './card.tsx';
import { CornerMark } from './corner-mark.tsx';
import { Keypad } from './keypad.tsx';
import { Plate } from './plate.tsx';
import { PunchedStep } from './punched-step.tsx';
import { ReachPicture } from './reach-picture.tsx';
import { cellId, type GridCell, type GridColumn, ReadingGrid } from './reading-grid.tsx';
import { Ruler, RulerLegend } from './ruler.tsx';
import { Sheet } from './sheet.tsx';
import { SuspensionDrawing } from './suspension-drawing.tsx';
import { TopBar } from './top-bar.tsx';
import { Verdict } from './verdict.tsx';

const nothing = () => {};
const degrees = (x: number) => x.toFixed(2).replace('-', '−');

const cam: Adjuster = {
  id: 'front-cam',
  name: 'lower arm, front cam',
  kind: 'indexed-cam',
  reference: '1',
  positions: Array.from({ length: 9 }, (_, i) => ({ label: String(i + 1), offset: [0, i, 0] })),
};
const bolt: Adjuster = { id: 'bolt', name: 'lower arm, rear bolt', kind: 'eccentric-cam', reference: 0, marks: 24 };
const pack: Adjuster = {
  id: 'pack',
  name: 'upper arm, front pack',
  kind: 'shim-pack',
  reference: 0,
  sizes: [3, 1.5, 0.8],
};
const rod: Adjuster = { id: 'rod', name: 'tie rod', kind: 'threaded-rod', reference: 0, lead: 1.5 };

interface Try {
  adjuster: Adjuster;
  corner: Corner;
  from: Position;
  to: Position;
  stackFrom?: readonly ShimCount[];
  stackTo?: readonly ShimCount[];
}
const tries: readonly Try[] = [
  { adjuster: cam, corner: 'LF', from: '3', to: '5' },
  {
    adjuster: pack,
    corner: 'RF',
    from: 4.6,
    to: 6.8,
    stackFrom: [
      { size: 3, count: 1 },
      { size: 0.8, count: 2 },
    ],
    stackTo: [
      { size: 3, count: 2 },
      { size: 0.8, count: 1 },
    ],
  },
  { adjuster: { ...bolt, turns: 'clockwise' }, corner: 'LR', from: -15, to: 45 },
  { adjuster: rod, corner: 'RF', from: 0, to: 4 / 3 },
  { adjuster: pack, corner: 'LF', from: 6, to: 2.5 },
  { adjuster: { ...bolt, zero: 'end', marks: 16 }, corner: 'RR', from: 135, to: 45 },
  { adjuster: rod, corner: 'LF', from: 0.5, to: 0.25 },
  { adjuster: { ...cam, positions: cam.positions.slice(0, 3) }, corner: 'LF', from: '1', to: '3' },
  { adjuster: pack, corner: 'LF', from: 0, to: 20 },
];

/** A made-up adjuster of a kind, as the kind itself has it. */
const made = (kind: string, fields: Partial<Adjuster> = {}): Adjuster => ({
  ...adjusterKinds[kind]?.sample.adjuster,
  id: kind,
  name: adjusterKinds[kind]?.name ?? kind,
  kind,
  reference: 0,
  ...fields,
});
const SLEEVES = { degrees: [0.5, 1, 1.5], marks: 24, reference: 'plain' };
/** Every kind's own sample, then what each finds hardest. */
const kindTries: readonly Try[] = [
  ...Object.values(adjusterKinds).map(
    ({ kind, sample }): Try => ({ adjuster: made(kind), corner: 'LF', from: sample.from, to: sample.to }),
  ),
  { adjuster: made('slide', { direction: [0, -1, 0], step: 0.5, range: [0, 12] }), corner: 'RF', from: 7.5, to: 7 },
  { adjuster: made('slide', { direction: [-0.7, 0.7, 0], range: [-20, 5] }), corner: 'LR', from: 5, to: -18 },
  { adjuster: made('clamp-bolt'), corner: 'RF', from: 1.5, to: -1.5 },
  { adjuster: made('clamp-bolt', { eccentricity: 2, spacing: 60 }), corner: 'LR', from: -15, to: 75 },
  { adjuster: made('clamp-bolt'), corner: 'RR', from: 0.2, to: 0.3 },
  { adjuster: made('offset-sleeve', { marks: 24 }), corner: 'RF', from: 330, to: 75 },
  { adjuster: made('offset-sleeve', { marks: 8 }), corner: 'LF', from: 270, to: 0 },
  { adjuster: made('offset-sleeve', SLEEVES), corner: 'LF', from: 'plain', to: '1.5@30' },
  { adjuster: made('offset-sleeve', SLEEVES), corner: 'RF', from: '0.5@90', to: 'plain' },
  { adjuster: made('offset-sleeve', SLEEVES), corner: 'RF', from: '1@330', to: '1@75' },
  { adjuster: made('wedge-shim'), corner: 'RR', from: '0.5@300', to: '0.5@90' },
  { adjuster: made('wedge-shim'), corner: 'LR', from: '0.5@180', to: 'none' },
  { adjuster: made('wedge-shim'), corner: 'LR', from: '0.25@15', to: '0.75@345' },
  { adjuster: made('axle-wedge', { degrees: [-2, -1, 1, 2] }), corner: 'RF', from: 2, to: -1 },
  { adjuster: made('axle-wedge'), corner: 'LF', from: 2, to: 0 },
  {
    adjuster: made('effect-table', {
      positions: Array.from({ length: 24 }, (_, i) => ({
        label: `${i + 1}`,
        caster: i / 8,
        camber: -i / 24,
        toe: i / 50,
      })),
    }),
    corner: 'LF',
    from: 17,
    to: 4,
  },
  { adjuster: made('effect-table', { positions: undefined, perStep: { camber: 0.1 } }), corner: 'LF', from: -1, to: 2 },
  { adjuster: made('effect-table', { positions: undefined, perStep: { camber: 0.1 } }), corner: 'LF', from: 6, to: -9 },
];
const all = [...tries, ...kindTries];

function Head() {
  return <TopBar back="#" title="Tarn GT, blue" plate="QX 41 TRN" />;
}

const front: readonly GridColumn[] = [
  { id: 'LF', corner: 'LF' },
  { id: 'RF', corner: 'RF' },
];
const rear: readonly GridColumn[] = [
  { id: 'LR', corner: 'LR' },
  { id: 'RR', corner: 'RR' },
];
const row = (id: string) => ({ id: id.toLowerCase(), label: id });

function AsFound() {
  const [active, pick] = useState('RF.camber');
  const [typed, type] = useState('−0.3');
  const values: Record<string, GridCell> = {
    'LF.caster': { text: '4.35', verdict: 'out-low' },
    'RF.caster': { text: '5.10', verdict: 'in' },
    'LF.camber': { text: '0.42', verdict: 'out-high' },
    'RF.camber': { text: '' },
    'LF.toe': { text: '0.1.', refused: true },
    'RF.toe': { text: '' },
    'LR.camber': { text: '−1°30′', verdict: 'edge' },
    'RR.camber': { text: '' },
    'LR.toe': { text: '' },
    'RR.toe': { text: '' },
  };
  const shown = { ...values, [active]: { ...values[active], text: active === 'RF.camber' ? typed : '' } };
  return (
    <>
      <Sheet>
        <PunchedStep state="done" title="Before you measure" note="10 of 10" />
        <PunchedStep state="live" title="As found" note="degrees" time="saved">
          <ReadingGrid
            rows={['Caster', 'Camber', 'Toe'].map(row)}
            columns={front}
            values={shown}
            active={active}
            onPick={pick}
          />
          <ReadingGrid rows={['Camber', 'Toe'].map(row)} columns={rear} values={shown} active={active} onPick={pick} />
        </PunchedStep>
      </Sheet>
      <Keypad
        caption="RF camber"
        hint="window −1.00 to −0.20"
        onKey={(key) => type((text) => (key === '⌫' ? text.slice(0, -1) : text + key))}
      />
    </>
  );
}

function instructionOf({ adjuster, from, to, corner }: Try): string | undefined {
  const act = adjusterKinds[adjuster.kind]?.act(adjuster, from, to, { corner });
  return act && wordsOf().act(act);
}

function Moves({ number }: { number: number }) {
  const move = all[number] ?? all[0];
  if (!move) return null;
  return (
    <>
      <Sheet>
        <PunchedStep state="done" title="As found" note="10 readings" time="09:12" onPick={nothing} />
        <PunchedStep state="live" title="Moves" note="2 of 5" time="about 21 min">
          <Card tone="form" corner={move.corner} title={move.adjuster.name}>
            <AdjusterDrawing {...move} />
            <p class="soft">When it is right, the rack shows</p>
            <p class="big">5.02 −0.31</p>
            <p>{instructionOf(move)}</p>
          </Card>
        </PunchedStep>
        <PunchedStep state="later" title="Re-measured" />
      </Sheet>
      <ActionBar
        primary={{ label: 'Done, torqued', onPress: nothing }}
        secondary={[
          { label: "Won't move", onPress: nothing },
          { label: 'Set to…', onPress: nothing },
        ]}
      />
    </>
  );
}

function Remeasured() {
  return (
    <>
      <Sheet>
        <PunchedStep state="done" title="Moves" note="5 made" time="09:48" />
        <PunchedStep state="live" title="Re-measured" note={<CornerMark corner="LF" />} time="round 1">
          <p>
            <Verdict state="in" label="Caster" /> <b class="figure">5.05</b>
          </p>
          <Ruler
            window={{ low: 4.5, aim: 5, high: 5.5 }}
            found={4.35}
            predicted={5.02}
            measured={5.05}
            deviation={0.08}
            format={degrees}
          />
          <p>
            <Verdict state="out-high" label="Camber, high by 0.24" /> <b class="figure">0.04</b>
          </p>
          <Ruler window={{ low: -1, high: -0.2 }} found={0.42} predicted={-0.58} measured={0.04} format={degrees} />
          <p>
            <Verdict state="edge" label="Toe" /> <b class="figure">0.09</b>
          </p>
          <Ruler window={{ low: 0, high: 0.1 }} found={1.4} predicted={0.05} measured={0.09} format={degrees} />
          <RulerLegend />
          <Card tone="caution" title="The rear cam looks unmoved.">
            Caster and toe came as predicted; camber is 0.62° short, which is what 6 to 4 at the LF rear cam would have
            given.
          </Card>
        </PunchedStep>
      </Sheet>
      <ActionBar primary={{ label: 'Plan the next moves', onPress: nothing }} />
    </>
  );
}

function Cars() {
  return (
    <>
      <TopBar title="Cornerwright" aside="all saved" />
      <main style={{ padding: 10 }}>
        <input placeholder="Find a car or plate" aria-label="Find a car or plate" />
        <Card tone="live" href="#" title="Tarn GT, blue" aside={<Plate text="QX 41 TRN" />}>
          <span class="soft">On the rack. Next: LF lower arm, front cam 3 to 5</span>
        </Card>
        <Card href="#" title="Ostler 250 van" aside={<Plate text="HB 08 OST" />}>
          <span class="soft">
            <Verdict state="in" label="as left 12 Nov, all in window" />
          </span>
        </Card>
        <Card href="#" title="Ribble Six, club car" aside={<Plate text="R 77" />}>
          <span class="soft">
            <Verdict state="edge" label="as left 3 Nov, LR camber at its stop" />
          </span>
        </Card>
        <Card href="#" title="Marl estate, grey" aside={<Plate text="LK 19 MRL" />}>
          <span class="soft">
            <Verdict state="out-low" label="as found only, waiting for rod ends" />
          </span>
        </Card>
        <Card onPick={nothing} title="Practice car" aside={<Plate text="TRY ME" />}>
          <span class="soft">
            <Verdict state="unknown" label="Made up, with a hidden bend to find" />
          </span>
        </Card>
      </main>
      <ActionBar primary={{ label: 'New visit', onPress: nothing, disabled: true }} />
    </>
  );
}

const window = (low: number, high: number) => ({ low, high });

/** Two cams and a rod, two packs, one pack and a rod, one pack, nothing; with and without caster. */
function Reaches() {
  const turned = Array.from({ length: 9 }, (_, i) => (2 * Math.PI * i) / 9);
  const positions = turned.map((a, i) => ({ label: `${i + 1}`, offset: [0, 4 * Math.sin(a), 4 * (Math.cos(a) - 1)] }));
  const cams = ['lowerFront', 'lowerRear'].map((at) => ({ ...cam, id: at, at, positions }));
  const packs = ['upperFront', 'upperRear'].map((at) => ({ ...pack, id: at, at, direction: [0, -1, 0], max: 9 }));
  const tie = { ...rod, links: ['tieInner'], stepTurns: 1 / 12, range: [-6, 6] };
  const sets = [[...cams, tie], packs, [...packs.slice(1), tie], packs.slice(1), []];
  const axle = (adjusters: readonly Adjuster[]): Axle => ({
    suspension: suspensionFromStarter(doubleWishboneFront, 'front'),
    adjusters,
    steered: true,
  });
  const spec = { front: { caster: window(4, 5.5), camber: window(-1, -0.2), toe: window(0, 0.2) } };
  return (
    <Sheet>
      {sets.map((adjusters) =>
        [
          { caster: 3.6, camber: 0.4, toe: 0.3 },
          { camber: 0.4, toe: 0.3 },
        ].map((LF) => {
          const car = {
            id: 'c',
            label: 'Tarn GT',
            wheel: { rimDiameter: 420 },
            front: axle(adjusters),
            rear: axle([]),
          };
          const reach = reachOf({ car, spec, reading: { LF }, settings: {} }, 'LF', {});
          return (
            <PunchedStep
              key={cellId(`${adjusters.length}`, `${LF.caster}`)}
              state="live"
              title={`${adjusters.map(({ id }) => id)}`}
            >
              <ReachPicture reach={reach} format={(x, digits = 2) => `${x.toFixed(digits).replace('-', '−')}°`} />
            </PunchedStep>
          );
        }),
      )}
    </Sheet>
  );
}

/** Every suspension kind plain, then with each of its points ringed; `kind` narrows it to one. */
function Build({ kind: only }: { kind: string | null }) {
  const kinds = Object.values(suspensionKinds).filter(({ kind }) => !only || kind === only);
  return (
    <>
      <Head />
      <Sheet>
        {kinds.map(({ kind, name, points }) => (
          <PunchedStep key={kind} state="live" title={name}>
            <SuspensionDrawing kind={kind} />
            {only && points.map((point) => <SuspensionDrawing key={point} kind={kind} highlight={point} />)}
          </PunchedStep>
        ))}
        {!only && (
          <PunchedStep state="live" title="A length, a measured point">
            <SuspensionDrawing kind="double-wishbone" highlight={['lowerRear', 'lowerBall']} />
            <SuspensionDrawing kind="five-link" highlight="outer4" points={{ outer4: [-30, 640, 195] }} />
          </PunchedStep>
        )}
      </Sheet>
    </>
  );
}

function Drawings({ kind }: { kind: string | null }) {
  return (
    <Sheet>
      <PunchedStep state="live" title="Every drawing">
        {all.map(
          (one, i) =>
            (!kind || one.adjuster.kind === kind) && (
              <Card key={cellId(one.adjuster.id, String(i))} tone="form" corner={one.corner} title={one.adjuster.name}>
                <AdjusterDrawing {...one} />
                <p>{instructionOf(one)}</p>
              </Card>
            ),
        )}
      </PunchedStep>
    </Sheet>
  );
}

const asked = new URLSearchParams(location.search);
const theme = asked.get('theme');
if (theme) document.documentElement.dataset.theme = theme;
const scene = asked.get('scene') ?? 'drawings';
const place = document.getElementById('app');
if (place)
  render(
    <div class="screen">
      {['as-found', 'moves', 'remeasured', 'drawings'].includes(scene) && <Head />}
      {scene === 'as-found' && <AsFound />}
      {scene === 'moves' && <Moves number={Number(asked.get('move') ?? 0)} />}
      {scene === 'remeasured' && <Remeasured />}
      {scene === 'cars' && <Cars />}
      {scene === 'build' && <Build kind={asked.get('kind')} />}
      {scene === 'reach' && <Reaches />}
      {scene === 'drawings' && <Drawings kind={asked.get('kind')} />}
    </div>,
    place,
  );
