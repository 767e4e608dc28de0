/** How well this rack repeats: one standard deviation of each angle. The chance of a plan comes from it. */
import { InputError } from '../../../core/input-error.ts';
import { DEFAULT_GAUGE } from '../../../core/reading/gauge.ts';
import type { Rule } from '../../../core/rule.ts';
import { parseAngle } from '../../../core/units/parse.ts';
import { gauge, setGauge } from '../../state/preferences.ts';
import { draft, dropDraft, keepDraft } from '../../state/records.ts';
import { words } from '../../state/words.ts';

const ANGLES = ['caster', 'camber', 'toe'] as const;
const DRAFT = 'gauge';

export function GaugeSettings() {
  const now = gauge.value ?? DEFAULT_GAUGE;
  const texts = draft(DRAFT)?.texts ?? Object.fromEntries(ANGLES.map((angle) => [angle, String(now[angle])]));
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
        Measure the same car several times without moving anything; two readings in three lie within this many degrees
        of their middle.
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
            {words.refusal({ field: angle, value: texts[angle], rule: read })}
          </p>
        );
      })}
    </>
  );
}

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
