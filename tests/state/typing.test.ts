/** However fast a reading is typed, every figure lands in its own cell. */
import { describe, expect, it, test } from 'vitest';
import { fieldsOf, figureOf, walkOf } from '../../app/state/fields.ts';
import { END, GRACE, type Pad, pick, press, skipKey, type Typing } from '../../app/state/typing.ts';
import { car } from '../browser/practice.ts';
import { figuresOf, handOf, touchesFor } from '../tools/typed-reading.ts';

const FORM = { sai: true, total: false, reference: 'thrust-line' } as const;
const UNITS = {
  ...{
    angle: 'degrees',
    toe: 'angle',
    toeParts: 'decimal',
    length: 'mm',
    thrust: 'right-plus',
    decimal: '.',
    sai: true,
  },
} as const satisfies Pad['units'];
const ACROSS = fieldsOf(car, FORM);

const padOf = (decimals: number, order: 'across' | 'wheel' = 'across', units: Pad['units'] = UNITS): Pad => ({
  fields: walkOf(ACROSS, order),
  units,
  decimals: () => decimals,
});

const begun = ({ fields }: Pad): Typing => ({ texts: {}, cursor: fields[0]?.id ?? END });

/** After keys that follow each other by so many ms; `/` is Next, `s` Skip, a space is a pause of a second. */
function thumbed(keys: string, pad: Pad, gap = 30, from = begun(pad)): Typing {
  let at = 0;
  let typing = from;
  for (const key of keys) {
    at += key === ' ' ? 1000 : gap;
    if (key !== ' ') typing = press(typing, { '/': 'next', s: 'skip', '<': '⌫' }[key] ?? key, at, pad);
  }
  return typing;
}

const SEED = process.env.CORNERWRIGHT_SEED ?? 'typing';
const SEQUENCES = 3000;

const numberIn = (text = ''): number => Number(text.replace('−', '-'));

test(`${SEQUENCES} readings typed by hands of every kind, seed ${SEED}`, () => {
  const kinds = new Set<string>();
  for (let i = 0; i < SEQUENCES; i++) {
    const seed = `${SEED} ${i}`;
    const hand = handOf(seed);
    const order = i % 2 === 0 ? 'across' : 'wheel';
    const pad = padOf(hand.set, order);
    const type = (name: string, from: Typing) => {
      const figures = figuresOf(name, pad.fields, hand);
      let at = 0;
      const typing = touchesFor(name, figures, hand).reduce((so, { key, after: gap }) => {
        at += gap;
        return press(so, key, at, pad);
      }, from);
      return { figures, typing };
    };
    // Every third is gone through again with other figures.
    const first = type(seed, begun(pad)).typing;
    const { figures, typing } =
      i % 3 > 0 ? type(seed, begun(pad)) : type(`${seed} again`, pick(first, pad.fields[0]?.id ?? END));
    kinds.add(`${order} ${hand.set} ${hand.shown} ${hand.next} ${hand.gap}`);
    const wrong = figures.filter(({ id, text }) => numberIn(typing.texts[id]) !== numberIn(text));
    if (wrong.length > 0 || typing.cursor !== END) {
      expect.fail(`${seed}: ${JSON.stringify({ hand, wrong, typing })}`);
    }
  }
  // Both orders, each count of decimals told and shown, each way with Next, each speed: all that there are.
  expect(kinds.size).toBe(90);
});

describe('a decimal more than was told', () => {
  it('never begins the next wheel', () => {
    const pad = padOf(2);
    const { texts, cursor } = thumbed('0.150', pad);
    expect(texts).toEqual({ 'LF.caster': '0.150' });
    expect(cursor).toBe('RF.caster');
  });

  it('is given back to the next figure by its point', () => {
    const pad = padOf(2);
    expect(thumbed('0.15', pad).texts).toEqual({ 'LF.caster': '0.15' });
    expect(thumbed('0.154', pad).texts).toEqual({ 'LF.caster': '0.154' });
    expect(thumbed('0.154.1', pad).texts).toEqual({ 'LF.caster': '0.15', 'RF.caster': '4.1' });
  });

  it('is told from two digits before the point by what a figure of the cell can be', () => {
    expect(thumbed('4.3512.50', padOf(2)).texts).toEqual({ 'LF.caster': '4.35', 'RF.caster': '12.50' });
    // A wheel that was hit leans by 12 degrees, and none leans by 51.
    const before = { 'LF.caster': '4.50', 'RF.caster': '4.50' };
    expect(thumbed('4.504.500.1512.20', padOf(2)).texts).toEqual({
      ...{ ...before, 'LF.camber': '0.15', 'RF.camber': '12.20' },
    });
    expect(thumbed('4.504.500.1551.20', padOf(2)).texts).toEqual({
      ...{ ...before, 'LF.camber': '0.155', 'RF.camber': '1.20' },
    });
  });

  it('that comes late and is followed by another figure was one of the figure before', () => {
    const { texts } = thumbed('0.15 0', padOf(2));
    expect(texts).toEqual({ 'LF.caster': '0.15', 'RF.caster': '0' });
    expect(thumbed('0.15 05', padOf(2)).texts).toEqual({ 'LF.caster': '0.150', 'RF.caster': '5' });
  });

  it('that comes late and stands alone is asked about by the first Next, and taken by the second', () => {
    const asked = thumbed('0.15 0/', padOf(2));
    expect(asked).toMatchObject({ cursor: 'RF.caster', word: 'alone' });
    expect(press(asked, 'next', 9000, padOf(2))).toMatchObject({ cursor: 'LF.camber', texts: { 'RF.caster': '0' } });
  });

  it('that was asked about belongs to the figure before where another figure follows', () => {
    const { texts } = thumbed('0.15 5/±1.20', padOf(2));
    expect(texts).toEqual({ 'LF.caster': '0.155', 'RF.caster': '−1.20' });
    expect(thumbed('0.15 5/.10', padOf(2)).texts).toEqual({ 'LF.caster': '0.15', 'RF.caster': '5.10' });
  });

  it('after the last cell stays there', () => {
    const pad = { ...padOf(2), fields: ACROSS.slice(0, 1) };
    expect(thumbed('0.150', pad)).toMatchObject({ cursor: END, texts: { 'LF.caster': '0.150' } });
  });
});

describe('Next', () => {
  it('passes no empty cell, and says so', () => {
    const pad = padOf(2);
    expect(thumbed('/', pad)).toMatchObject({ cursor: 'LF.caster', word: 'empty' });
    expect(thumbed('±/', pad)).toMatchObject({ cursor: 'LF.caster', word: 'empty' });
    // The first says that the figure was complete, the second would pass what is empty.
    expect(thumbed('4.35/', pad)).not.toHaveProperty('word');
    expect(thumbed('4.35//', pad)).toMatchObject({ cursor: 'RF.caster', word: 'empty' });
  });

  it('passes what is no number: it stays, to be mended', () => {
    expect(thumbed('x/', padOf(2))).toMatchObject({ cursor: 'RF.caster', texts: { 'LF.caster': 'x' } });
  });

  it('just after a walk-on passes no cell that was typed before either', () => {
    const pad = padOf(2);
    const all = thumbed('4.355.10', pad);
    const again = thumbed('4.45/', pad, 30, pick(all, 'LF.caster'));
    expect(again).toMatchObject({ cursor: 'RF.caster', texts: { 'LF.caster': '4.45', 'RF.caster': '5.10' } });
    expect(thumbed('5.20', pad, 30, again)).toMatchObject({ cursor: 'LF.camber', texts: { 'RF.caster': '5.20' } });
    expect(press(again, 'next', 9000, pad).cursor).toBe('LF.camber');
  });

  it('after it a digit is the next figure’s, however soon', () => {
    expect(thumbed('4.35/3', padOf(2)).texts).toEqual({ 'LF.caster': '4.35', 'RF.caster': '3' });
    expect(thumbed('4.3/5', padOf(2)).texts).toEqual({ 'LF.caster': '4.3', 'RF.caster': '5' });
  });
});

describe('Skip', () => {
  it('passes an empty cell and leaves a mark there, until something is typed in it', () => {
    const pad = padOf(2);
    const skipped = thumbed('s', pad);
    expect(skipped).toMatchObject({ cursor: 'RF.caster', texts: { [skipKey('LF.caster')]: 'yes' } });
    expect(thumbed('1', pad, 30, pick(skipped, 'LF.caster')).texts).toEqual({ 'LF.caster': '1' });
  });

  it('throws away a sign that no figure followed', () => {
    expect(thumbed('±s', padOf(2))).toMatchObject({ cursor: 'RF.caster', texts: { 'LF.caster': '' } });
  });

  it('throws away no figure', () => {
    expect(thumbed('4.3s', padOf(2))).toMatchObject({
      cursor: 'LF.caster',
      texts: { 'LF.caster': '4.3' },
      word: 'not-empty',
    });
  });
});

describe('a figure that is complete', () => {
  const pad = padOf(2);
  const full = pick(thumbed('4.35', pad), 'LF.caster');

  it('is typed anew, not made longer', () => {
    expect(thumbed('5', pad, 30, full).texts).toEqual({ 'LF.caster': '5' });
    expect(thumbed('5.10', pad, 30, full)).toMatchObject({ cursor: 'RF.caster', texts: { 'LF.caster': '5.10' } });
  });

  it('has its sign changed, and the next one the sign that is typed before it', () => {
    expect(thumbed('±', pad, 30, full).texts).toEqual({ 'LF.caster': '−4.35' });
    expect(thumbed('±5', pad, 30, full).texts).toEqual({ 'LF.caster': '−5' });
    // Of one that is below zero too: whoever goes through them again types the sign first, as before.
    const below = pick(thumbed('±4.35', pad), 'LF.caster');
    expect(thumbed('±', pad, 30, below).texts).toEqual({ 'LF.caster': '4.35' });
    expect(thumbed('±5', pad, 30, below).texts).toEqual({ 'LF.caster': '−5' });
    expect(thumbed('±±5', pad, 30, below).texts).toEqual({ 'LF.caster': '5' });
  });

  it('may have fewer decimals: come back to, it is typed anew too', () => {
    const back = pick(thumbed('4.3/', pad), 'LF.caster');
    expect(back.fresh).toBe(true);
    expect(thumbed('5', pad, 30, back).texts).toEqual({ 'LF.caster': '5' });
    // The caret that stays, or is there again after a start, goes on where it was.
    expect(thumbed('5', pad, 30, pick(thumbed('4.', pad), 'LF.caster')).texts).toEqual({ 'LF.caster': '4.5' });
  });

  it('keeps its digits from what is rubbed out after it, but for a decimal too many', () => {
    expect(thumbed('4.35<<', pad)).toMatchObject({ cursor: 'RF.caster', texts: { 'LF.caster': '4.35' } });
    expect(thumbed('4.351<<', pad)).toMatchObject({ cursor: 'RF.caster', texts: { 'LF.caster': '4.35' } });
  });
});

it('walks on in minutes after two digits, and none is added to them', () => {
  const pad = padOf(2, 'across', { ...UNITS, angle: 'degrees-minutes' });
  expect(thumbed('4.305', pad).texts).toEqual({ 'LF.caster': '4°30', 'RF.caster': '5' });
  expect(thumbed('4.305.10', pad).texts).toEqual({ 'LF.caster': '4°30', 'RF.caster': '5°10' });
});

it('goes through all of a wheel before the next where the rack does', () => {
  expect(
    padOf(2, 'wheel')
      .fields.map(({ id }) => id)
      .slice(0, 5),
  ).toEqual([...['LF.caster', 'LF.camber', 'LF.toe', 'LF.sai'], 'RF.caster']);
});

it('a digit after the time of grace begins the next figure', () => {
  const pad = padOf(2);
  const walked = thumbed('0.15', pad);
  expect(press(walked, '3', 4 * 30 + GRACE, pad).texts).toEqual({ 'LF.caster': '0.153' });
  expect(press(walked, '3', 4 * 30 + GRACE + 1, pad).texts).toEqual({ 'LF.caster': '0.15', 'RF.caster': '3' });
});

describe('ride heights', () => {
  const asked = fieldsOf(car, { ...FORM, heights: true });
  const pad = (order: 'across' | 'wheel', units: Pad['units'] = UNITS): Pad => ({
    fields: walkOf(asked, order),
    units,
    decimals: ({ angle }) => (angle === 'rideHeight' ? 0 : 2),
  });

  test.each(['across', 'wheel'] as const)(
    'come before all angles, %s, and none of them walks on by itself',
    (order) => {
      expect(
        pad(order)
          .fields.slice(0, 5)
          .map(({ id }) => id),
      ).toEqual([...['LF', 'RF', 'LR', 'RR'].map((corner) => `${corner}.rideHeight`), 'LF.caster']);
      const { texts, cursor } = thumbed('385/384.5/401/1401/4.15', pad(order));
      expect(texts).toMatchObject({
        ...{ 'LF.rideHeight': '385', 'RF.rideHeight': '384.5', 'LR.rideHeight': '401', 'RR.rideHeight': '1401' },
        'LF.caster': '4.15',
      });
      expect(cursor).not.toBe('LF.caster');
    },
  );

  it('are typed with the decimal sign, in minutes too', () => {
    const minutes = { ...UNITS, angle: 'degrees-minutes', length: 'inch', decimal: ',' } as const;
    expect(thumbed('15.25/', pad('across', minutes)).texts['LF.rideHeight']).toBe('15,25');
  });
});

it('asks for no decimals of what is typed in parts of an inch', () => {
  const [toe] = fieldsOf(car, FORM).filter(({ angle }) => angle === 'toe');
  const told = (toeParts: '32' | 'decimal') => figureOf(toe!, { ...UNITS, toe: 'inch', toeParts });
  expect([told('32'), told('decimal')]).toEqual([undefined, 'inch']);
});
