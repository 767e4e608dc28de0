/** The windows of a new car on the app's own keypad: each cell walks on by itself, as a reading's do. */
import { useEffect, useRef } from 'preact/hooks';
import { cellInSight } from '../../parts/cell-in-sight.ts';
import { Keypad, type KeypadKey } from '../../parts/keypad.tsx';
import { ReadingGrid } from '../../parts/reading-grid.tsx';
import { figureOf } from '../../state/fields.ts';
import { rack, units } from '../../state/preferences.ts';
import { draft } from '../../state/records.ts';
import { END, isFraction, type Pad, pick, press, type Typing } from '../../state/typing.ts';
import { toeUnitWord } from '../../state/units.ts';
import { AXLES } from './car-texts.ts';
import { Buttons, TextField } from './field.tsx';
import { type Form, formDraft } from './form.ts';
import { cardUnits, type Texts } from './numbers.ts';
import { anglesOf, cellsOf, columnsOf, ENDS, TOTAL, type WindowCell, windowsIn } from './start-texts.ts';

const CARET = '@caret';
const ANGLES = { caster: 'Caster', camber: 'Camber', toe: 'Toe', totalToe: 'Total toe' } as const;
const COLUMNS = { aim: 'aim', half: '±', low: 'low', high: 'high' } as const;
const angleWord = ({ angle }: WindowCell): string => ANGLES[angle as keyof typeof ANGLES];
const nameOf = (cell: WindowCell): string =>
  `${cell.where === 'front' ? 'Front' : 'Rear'} ${angleWord(cell).toLowerCase()}, ${COLUMNS[cell.column]}`;

/** The cell that is up; none once all were walked through. */
export const activeCell = (texts: Texts): WindowCell | undefined => {
  const cells = cellsOf(texts);
  return texts[CARET] === undefined ? cells[0] : cells.find(({ id }) => id === texts[CARET]);
};
export const againTexts = (texts: Texts): Texts => ({ [CARET]: cellsOf(texts)[0]?.id ?? END });

/** What of the typing is of the moment only: kept nowhere. */
type Hand = Omit<Typing, 'texts' | 'cursor'>;

function useTyping(form: Form) {
  const hand = useRef<Hand>({});
  // Asked anew at every key: fast hands outrun a drawing.
  const now = (): Texts => draft(formDraft(form.id))?.texts ?? form.texts;
  const change = (turn: (typing: Typing, pad: Pad) => Typing) => {
    const texts = now();
    const own = { ...units.value, ...cardUnits() };
    const fields = cellsOf(texts);
    const decimals: Pad['decimals'] = (field) => {
      const figure = figureOf(field, own);
      return figure ? rack.value.decimals[figure] : 0;
    };
    const pad: Pad = { fields, units: own, decimals };
    const cursor = activeCell(texts)?.id ?? END;
    const { texts: typed, cursor: to, ...rest } = turn({ ...hand.current, texts, cursor }, pad);
    hand.current = rest;
    form.put({ ...typed, ...windowsIn(typed), [CARET]: to });
  };
  return {
    hand: hand.current,
    // The key of minutes types the degree's mark: a window may be in minutes in any shop.
    onKey: (key: KeypadKey, at: number) => change((typing, pad) => press(typing, key === 'dm' ? '°' : key, at, pad)),
    onPick: (id: string) => change((typing) => pick(typing, id)),
  };
}

export function WindowCells({ form }: { readonly form: Form }) {
  const { texts } = form;
  const { onPick } = useTyping(form);
  const active = activeCell(texts)?.id;
  useEffect(() => cellInSight(), [active]);
  const { angle, toe, length } = cardUnits();
  const choose = (path: string) => (value: string) => {
    const next = { ...texts, [path]: value };
    form.put({ [path]: value, ...windowsIn(next), [CARET]: cellsOf(next)[0]?.id ?? END });
  };
  return (
    <>
      <p class="soft">
        From the maker’s information; the app knows none. In {angle === 'degrees' ? 'degrees' : 'degrees and minutes'}
        {toe === 'angle' ? '' : `, toe in ${toeUnitWord(toe)}`}. What has no window is left as it is.
      </p>
      {toe !== 'angle' && (
        <TextField
          form={form}
          path="car.wheel.rimDiameter"
          label={`Diameter at which toe is a length, ${length}`}
          mode="decimal"
        />
      )}
      {AXLES.map((axle) => (
        <div key={axle} class="window-grid">
          <h3>{axle === 'front' ? 'Front' : 'Rear'}</h3>
          <ReadingGrid
            rows={anglesOf(texts, axle).map((one) => ({ id: `${axle}.${one}`, label: ANGLES[one] }))}
            columns={columnsOf(texts).map((column) => ({ id: `@cell.${column}`, label: COLUMNS[column] }))}
            values={Object.fromEntries(
              cellsOf(texts)
                .filter(({ where }) => where === axle)
                .map(({ id }) => [id, { text: texts[id] ?? '' }]),
            )}
            {...(active && { active })}
            onPick={(id) => {
              if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
              onPick(id);
            }}
          />
        </div>
      ))}
      <Buttons
        legend="The maker prints"
        options={[
          ['', 'aim ±'],
          ['yes', 'low and high'],
        ]}
        value={texts[ENDS] === 'yes' ? 'yes' : ''}
        onPick={choose(ENDS)}
      />
      <Buttons
        legend="Toe is of"
        options={[
          ['', 'each wheel'],
          ['yes', 'both together'],
        ]}
        value={texts[TOTAL] === 'yes' ? 'yes' : ''}
        onPick={choose(TOTAL)}
      />
    </>
  );
}

export function WindowDock({ form, active }: { readonly form: Form; readonly active: WindowCell }) {
  const { onKey, hand } = useTyping(form);
  const { angle, decimal } = cardUnits();
  const cells = cellsOf(form.texts);
  const own = { ...units.value, ...cardUnits() };
  return (
    <Keypad
      onKey={onKey}
      caption={nameOf(active)}
      value={form.texts[active.id] ?? ''}
      hint={hand.word === 'empty' && <span role="alert">Empty: type it, or Skip</span>}
      decimal={decimal}
      mode={angle}
      fraction={isFraction(own, active.angle)}
      nextLabel={active.id === cells.at(-1)?.id ? 'Done' : 'Next'}
    />
  );
}
