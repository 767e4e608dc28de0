/** A typical layout as a start: marked as nobody's, counted as badly known for as long as any point of it stands. */
import type { AxleName } from '../../../core/contract.ts';
import { startersFor } from '../../../core/starters/catalogue.ts';
import { STARTER_TOLERANCES, suspensionFromStarter } from '../../../core/starters/starter.ts';
import type { Form } from './form.ts';
import { lengthText, type Texts } from './numbers.ts';
import { pointsOf } from './points.ts';
import { isUsual, suspensionTexts } from './suspension-texts.ts';

interface Props {
  readonly form: Form;
  readonly axle: AxleName;
  readonly path: string;
  readonly kind: string;
}

export function Typical({ form, axle, path, kind }: Props) {
  const left = stillTypical(form.texts, axle, path, kind);
  return (
    <>
      {left.length > 0 && (
        <p class="plan-note" role="status">
          Typical, not any maker’s: measure your own.{' '}
          {left.length === 1 ? 'One point is still typical' : `${left.length} points are still typical`}, so every
          prediction is rough.
        </p>
      )}
      {left.length === 0 && isUsual(form.texts, path) && (
        <p class="plan-note" role="status">
          A usual layout, as large as this car: every prediction is rough until it is measured, or moved and read.
        </p>
      )}
      {left.length === 0 &&
        startersFor(kind, axle).map((starter) => (
          <button
            key={starter.name}
            type="button"
            class="quiet wide"
            onClick={() =>
              form.fill(
                suspensionTexts(suspensionFromStarter(starter, axle), path),
                [path],
                `Filled in: typical, ${starter.name}`,
              )
            }
          >
            Start from typical: {starter.name}
          </button>
        ))}
    </>
  );
}

/** Points that stand where a typical layout has them, so closely that nobody measured them there. */
function stillTypical(texts: Texts, axle: AxleName, path: string, kind: string): string[] {
  const points = pointsOf(texts, path);
  const layouts = startersFor(kind, axle).map((starter) => {
    const { points: typical } = suspensionFromStarter(starter, axle);
    return Object.keys(points).filter((name) =>
      typical[name]?.every((x, i) => Math.abs(x - (points[name]?.[i] ?? 0)) < 0.005),
    );
  });
  return layouts.sort((a, b) => b.length - a.length)[0] ?? [];
}

/** With the last typical point typed over, the points are as well known as a tape knows them. */
export function asTyped(form: Form, axle: AxleName, path: string, kind: string): Form {
  const place = `${path}.tolerance`;
  const put = (change: Texts) => {
    const next = { ...form.texts, ...change };
    const settled =
      STARTER_TOLERANCES.some((mm) => next[place] === lengthText(mm)) &&
      stillTypical(form.texts, axle, path, kind).length > 0 &&
      stillTypical(next, axle, path, kind).length === 0;
    form.put(settled ? { ...change, [place]: '' } : change);
  };
  return { ...form, put };
}
