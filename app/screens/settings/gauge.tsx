/** How well this rack repeats: one standard deviation of each angle. The chance of a plan comes from it. */
import { useEffect, useState } from 'preact/hooks';
import type { Reading } from '../../../core/contract.ts';
import { InputError } from '../../../core/input-error.ts';
import { DEFAULT_GAUGE } from '../../../core/reading/gauge.ts';
import { repeatsOf } from '../../../core/reading/repeats.ts';
import type { Rule } from '../../../core/rule.ts';
import { exactAngle } from '../../../core/units/exact-angle.ts';
import { parseAngle } from '../../../core/units/parse.ts';
import { partAngle } from '../../../core/units/shop.ts';
import { gauge, setGauge, units } from '../../state/preferences.ts';
import { draft, dropDraft, keepDraft, records } from '../../state/records.ts';
import { repeatedReadings } from '../../state/repeats.ts';
import { words } from '../../state/words.ts';

const ANGLES = ['caster', 'camber', 'toe'] as const;
const DRAFT = 'gauge';

export function GaugeSettings() {
  const now = gauge.value ?? DEFAULT_GAUGE;
  const texts =
    draft(DRAFT)?.texts ?? Object.fromEntries(ANGLES.map((angle) => [angle, exactAngle(now[angle], units.value)]));
  const type = (angle: string, text: string) => {
    const next = { ...texts, [angle]: text };
    const read = ANGLES.map((one) => repeatability(next[one] ?? ''));
    keepDraft(DRAFT, next, undefined);
    const [caster, camber, toe] = read;
    if (typeof caster === 'number' && typeof camber === 'number' && typeof toe === 'number') {
      setGauge({ caster, camber, toe });
      dropDraft(DRAFT);
    }
  };
  return (
    <>
      <p class="soft">
        Measure the same car several times without moving anything; two readings in three lie within so much of their
        middle, {units.value.angle === 'degrees' ? 'degrees' : 'degrees and minutes'}.
      </p>
      <div class="numbers-row">
        {ANGLES.map((angle) => (
          <label key={angle}>
            <span class="soft">{angle}</span>
            <input
              type="text"
              inputMode="decimal"
              value={texts[angle] ?? ''}
              aria-invalid={typeof repeatability(texts[angle] ?? '') !== 'number'}
              onInput={(event) => type(angle, event.currentTarget.value)}
            />
          </label>
        ))}
      </div>
      {ANGLES.map((angle) => {
        const read = repeatability(texts[angle] ?? '');
        return typeof read === 'number' ? null : (
          <p key={angle} class="wrong" role="alert">
            {words.refusal({ field: angle, value: texts[angle], rule: read }, undefined, units.value)}
          </p>
        );
      })}
      <Repeats />
    </>
  );
}

/** None until all are gone through. */
function useRepeatedReadings(): readonly (readonly Reading[])[] {
  const [found, setFound] = useState<readonly (readonly Reading[])[]>([]);
  const { cars, visits, readings, moves } = records.value;
  useEffect(() => {
    let isOver = false;
    repeatedReadings(records.value, () => isOver).then((all) => isOver || setFound(all));
    return () => {
      isOver = true;
    };
  }, [cars, visits, readings, moves]);
  return found;
}

/** What the readings on file that nothing was moved between say of it, offered beside what is set. */
function Repeats() {
  const told = repeatsOf(useRepeatedReadings(), DEFAULT_GAUGE);
  const least = Math.min(...ANGLES.map((angle) => told[angle].count));
  if (ANGLES.every((angle) => told[angle].count === 0)) return null;
  const now = gauge.value ?? DEFAULT_GAUGE;
  const shown = (angle: (typeof ANGLES)[number]) => partAngle(rounded(told[angle].deviation), units.value);
  const isTaken = ANGLES.every((angle) => Math.abs(rounded(told[angle].deviation) - now[angle]) < LEAST / 2);
  const take = () => {
    setGauge({
      caster: rounded(told.caster.deviation),
      camber: rounded(told.camber.deviation),
      toe: rounded(told.toe.deviation),
    });
    dropDraft(DRAFT);
  };
  return (
    <section class="repeats">
      <p>
        Readings on this phone that nothing was moved between, with the usual figures counted in:{' '}
        {ANGLES.map((angle) => `${angle} ${shown(angle)} from ${told[angle].count}`).join(', ')}.
        {least < FEW && ' More of them say it better: touch “Measure again” without a move.'}
      </p>
      {!isTaken && (
        <button type="button" class="quiet wide" onClick={take}>
          Take these
        </button>
      )}
    </section>
  );
}

/** Degrees: what is known of it no closer. */
const LEAST = 0.001;
const rounded = (x: number): number => Math.round(x / LEAST) * LEAST;
/** Repeats of which the usual figure still has the greater say. */
const FEW = 8;

const ALLOWED: Rule = { is: 'above-zero', high: 5, unit: 'degrees' };

/** Degrees, or what is allowed. */
function repeatability(text: string): number | Rule {
  try {
    const value = parseAngle(text);
    return value > 0 && value <= 5 ? value : ALLOWED;
  } catch (error) {
    if (error instanceof InputError) return ALLOWED;
    throw error;
  }
}
