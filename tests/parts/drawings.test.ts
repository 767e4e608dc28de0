import { h } from 'preact';
import { describe, expect, it } from 'vitest';
import { AdjusterDrawing } from '../../app/parts/adjuster-drawing.tsx';
import { adjusterPictures } from '../../app/parts/drawings/catalogue.ts';
import { around, StraightArrow, TurnArrow } from '../../app/parts/drawings/picture.tsx';
import { compareStacks } from '../../app/parts/drawings/shim-pack.tsx';
import { suspensionPictures } from '../../app/parts/drawings/suspension-catalogue.ts';
import { SuspensionDrawing } from '../../app/parts/suspension-drawing.tsx';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { eccentricCam } from '../../core/adjuster/eccentric-cam.ts';
import { type Adjuster, CORNERS } from '../../core/contract.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import { inFlats } from '../../core/units/flats.ts';
import { wordsOf } from '../../core/words/catalogue.ts';
import { POINT_WORDS } from '../../core/words/en/point-words.ts';
import { instruction } from '../tools/instruction.ts';
import { draw, markup, sampleOf, titleOf, words } from './markup.ts';

describe('the catalogues', () => {
  it('draw every adjuster kind of the core', () => {
    const kinds = Object.values(adjusterKinds).map(({ kind }) => kind);
    expect(kinds.length).toBeGreaterThan(0);
    expect(Object.keys(adjusterPictures).sort()).toEqual(kinds.sort());
  });
  it('draw every suspension kind of the core, with all its points and links, each point named', () => {
    const kinds = Object.values(suspensionKinds);
    expect(kinds.length).toBeGreaterThan(0);
    for (const { kind, points, links, lines = [] } of kinds) {
      const picture = suspensionPictures[kind];
      expect(Object.keys(picture?.points ?? {}).sort(), kind).toEqual([...points].sort());
      const named = points.map(wordsOf().point);
      expect(new Set(named).size, kind).toBe(points.length);
      for (const [i, point] of points.entries()) {
        expect(named[i], point).toMatch(/^[a-z]+( [a-z]+)*(, [a-z ]+)?$/);
        expect(Object.hasOwn(POINT_WORDS, point), point).toBe(true);
      }
      expect(picture?.links, kind).toEqual(links ?? []);
      const joined = (picture?.solid ?? []).flatMap((places) => places.slice(1).map((to, i) => [places[i], to]));
      for (const [a, b] of lines)
        expect(
          joined.some((ends) => ends.includes(a) && ends.includes(b)),
          `${kind} ${a} ${b}`,
        ).toBe(true);
      const held = [picture?.links, picture?.solid, picture?.upright].flat(2);
      for (const point of points) if (point !== 'wheelCentre') expect(held, kind).toContain(point);
    }
  });
  it('ring any point in both views and name it', () => {
    for (const { kind, points } of Object.values(suspensionKinds)) {
      const plain = markup(h(SuspensionDrawing, { kind }));
      expect(titleOf(plain), kind).toBe(suspensionPictures[kind]?.name);
      expect(plain).not.toMatch(/NaN|undefined|suspension-ring/);
      for (const point of points) {
        const drawn = markup(h(SuspensionDrawing, { kind, highlight: point }));
        expect(drawn.match(/suspension-ring/g), `${kind} ${point}`).toHaveLength(2);
        expect(drawn.match(/suspension-point/g), `${kind} ${point}`).toHaveLength(2 * points.length);
        expect(drawn).toContain(`<figcaption>${wordsOf().point(point)}</figcaption>`);
      }
    }
  });
  it('draw every position of every sample on every corner, with a title and no figure missing', () => {
    for (const [kind, { positions, sample }] of Object.entries(adjusterKinds)) {
      const adjuster = sampleOf(kind);
      const all = positions(adjuster);
      for (const corner of CORNERS)
        for (const to of [...all.slice(0, 4), ...all.slice(-4)]) {
          const drawn = draw(adjuster, sample.from, to, corner);
          expect(drawn, `${kind} ${to}`).not.toMatch(/NaN|undefined|Infinity/);
          const said = words(adjuster, sample.from, to, corner);
          expect(titleOf(drawn), `${kind} ${to}`).toContain(said?.to);
        }
    }
  });
  it('say on the card what the instruction leaves out, and nothing twice', () => {
    for (const [kind, { sample }] of Object.entries(adjusterKinds)) {
      const said = words(sampleOf(kind), sample.from, sample.to);
      const caption = draw(sampleOf(kind), sample.from, sample.to).split('<figcaption>')[1] ?? '';
      expect(said?.note, kind).toBeTruthy();
      if (said?.also) expect(caption, kind).toContain(said.also);
      else expect(caption, kind).not.toContain(said?.note);
    }
  });
  it('draw no arrow where nothing is moved', () => {
    for (const [kind, { sample }] of Object.entries(adjusterKinds)) {
      const drawn = draw(sampleOf(kind), sample.to, sample.to);
      expect(drawn, kind).not.toContain('picture-arrow');
      expect(drawn, kind).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});

it('draws an arrow that can be seen, however small the move, and none without one', () => {
  const length = /d="M(-\d+) 0H-11"/.exec(markup(h(StraightArrow, { from: [10, 0], to: [10.5, 0] })))?.[1];
  expect(Number(length)).toBeLessThanOrEqual(-20);
  const [x0, x1] = [
    ...markup(h(TurnArrow, { from: 0, to: 0.5, radius: 60 })).matchAll(/[M ]([-\d.]+) [-\d.]+(?=A|")/g),
  ].map(([, x]) => Number(x));
  expect((x1 ?? 0) - (x0 ?? 0)).toBeGreaterThan(8);
  expect(markup(h(TurnArrow, { from: 30, to: 30, radius: 60 }))).toBe('');
  expect(markup(h(StraightArrow, { from: [3, 4], to: [3, 4] }))).toBe('');
});

describe('shim pack', () => {
  const from = [
    { size: 1.5, count: 2 },
    { size: 3, count: 1 },
  ];
  const to = [
    { size: 3, count: 2 },
    { size: 0.8, count: 1 },
  ];
  it('tells kept from out and added by size, thickest first', () => {
    expect(compareStacks(from, to)).toEqual([
      { size: 3, fate: 'kept' },
      { size: 1.5, fate: 'out' },
      { size: 1.5, fate: 'out' },
      { size: 3, fate: 'added' },
      { size: 0.8, fate: 'added' },
    ]);
  });
  it('leaves a pack that does not change alone', () => {
    expect(compareStacks(from, from).map(({ fate }) => fate)).toEqual(['kept', 'kept', 'kept']);
    expect(words({ kind: 'shim-pack' }, 6, 6, 'LF', { stackFrom: from, stackTo: from })?.note).toBe('stays as it is');
  });
  it('says which shims come out where that is known, else how much more or less it is', () => {
    const stacks = { stackFrom: from, stackTo: to };
    expect(words({ kind: 'shim-pack' }, 6, 6.8, 'LF', stacks)).toEqual({
      from: '6',
      to: '6.8',
      unit: 'mm',
      note: 'take out 2 × 1.5, add 1 × 3 and 1 × 0.8',
    });
    expect(words({ kind: 'shim-pack' }, 0.3, 0.1)?.note).toBe('0.2 mm less');
    expect(words({ kind: 'shim-pack' }, 6, 6.8, 'LF', { stackTo: to })?.note).toBe('0.8 mm more');
  });
  it('draws the pack as it is to be built where nobody knows what is in it', () => {
    const move = { adjuster: sampleOf('shim-pack'), corner: 'LF', from: 6, to: 6.8 } as const;
    const drawn = markup(h(AdjusterDrawing, { ...move, stackTo: to }));
    expect(drawn.match(/shim shim-kept/g)).toHaveLength(3);
    expect(drawn).not.toMatch(/shim-out|shim-added/);
    const known = markup(h(AdjusterDrawing, { ...move, stackFrom: from, stackTo: to }));
    expect(known.match(/shim shim-(kept|out|added)/g)).toHaveLength(5);
  });
});

describe('numbered cam', () => {
  it('draws no way to turn, as nobody put on file which way round its numbers are', () => {
    for (const to of ['1', '5', '8'])
      expect(draw(sampleOf('indexed-cam'), '3', to)).not.toMatch(/picture-arrow|cam-turn/);
  });
});

describe('eccentric bolt', () => {
  const bolt = { kind: 'eccentric-cam', marks: 24, eccentricity: 4, direction: [0, 1, 0] };
  it('counts marks and says the sense, mirrored on the right', () => {
    expect(words({ ...bolt, turns: 'clockwise' }, -15, 45, 'LR')).toEqual({
      from: '−1',
      to: '+3',
      note: '4 marks clockwise, seen from the bolt head',
    });
    expect(words({ ...bolt, turns: 'clockwise' }, -15, 45, 'RR')?.note).toContain('anticlockwise');
    expect(words({ ...bolt, turns: 'anticlockwise' }, 45, 30, 'LR')?.note).toBe(
      '1 mark clockwise, seen from the bolt head',
    );
  });
  it('draws no arrow and no side where the sense is not on file, and says what the point does', () => {
    expect(words(bolt, 0, -30)).toEqual({ from: '', to: '2 marks', note: 'inboard' });
    expect(words(bolt, -30, 15)).toMatchObject({ to: '3 marks', note: 'outboard' });
    for (const to of [-30, 30]) {
      const drawn = draw(bolt as unknown as Adjuster, 0, to);
      expect(drawn).not.toMatch(/picture-arrow|eccentric-(from|to)|cam-turn|>[+−]/);
      expect(titleOf(drawn)).toMatch(/2 marks: (in|out)board\. Which way to turn is not on file/);
      // The sense drawn is the one on file.
      expect(draw({ ...bolt, turns: 'clockwise' } as unknown as Adjuster, 0, to)).toMatch(/>\+<.*>−<.*picture-arrow/s);
    }
  });
  it('agrees with the sentence of the core', () => {
    for (const turns of ['clockwise', 'anticlockwise'])
      for (const corner of ['LF', 'RF'] as const)
        for (const to of [-30, 30]) {
          const adjuster = { ...bolt, turns } as unknown as Adjuster;
          const sense = / (clockwise|anticlockwise)/;
          const said = sense.exec(instruction(eccentricCam, adjuster, 0, to, corner))?.[1];
          expect(sense.exec(words(adjuster, 0, to, corner)?.note ?? '')?.[1]).toBe(said);
        }
  });
});

describe('threaded rod', () => {
  it('counts whole turns and flats of a six-sided nut', () => {
    expect(inFlats(4 / 3)).toEqual({ whole: 1, flats: 2 });
    expect(inFlats(-0.25)).toEqual({ whole: 0, flats: 1.5 });
    expect(inFlats(0.9999999)).toEqual({ whole: 1, flats: 0 });
    expect(inFlats(0)).toEqual({ whole: 0, flats: 0 });
  });
  it('says longer or shorter and by how much', () => {
    expect(words({ kind: 'threaded-rod', lead: 1.5 }, 0, 4 / 3)).toEqual({
      from: '',
      to: '1 turn 2 flats',
      unit: 'longer',
      note: 'longer, by 2 mm',
    });
    expect(words({ kind: 'threaded-rod', lead: 1.5 }, 1, -1)?.note).toBe('shorter, by 3 mm');
    expect(words({ kind: 'threaded-rod', lead: 1.5 }, 0, -5 / 12)?.to).toBe('2½ flats');
    expect(words({ kind: 'threaded-rod', lead: 1.5 }, 0, 1 / 12)?.to).toBe('½ flat');
    expect(words({ kind: 'threaded-rod', lead: 1.5 }, 0, 0.3)?.to).toBe('1.8 flats');
  });
});

it('puts 0° at the top and 90° to the right, as a clock does', () => {
  expect(around(0, 10)).toEqual([0, -10]);
  expect(around(90, 10)).toEqual([10, -0]);
});
