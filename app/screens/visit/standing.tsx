/** Where the adjusters stand now: remembered from the last visit, corrected on a drawing or by typing, or "Don't know". */
import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { adjusterName } from '../../../core/adjuster/names.ts';
import { type Adjuster, CORNERS, type Corner, type ShimCount } from '../../../core/contract.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { lastPacks, oneByOne, packKey, packsOf, packText, thicknessOf } from '../../state/packs.ts';
import { usePlanAhead } from '../../state/planning.ts';
import { draft, keepDraft, records } from '../../state/records.ts';
import { sizeText } from '../../state/shim-size.ts';
import { entryDraft } from '../../state/stage.ts';
import { positionText, type Standing, settingsOf, standingKey, standings, UNKNOWN } from '../../state/standing.ts';
import { typedRecord } from '../../state/visit-actions.ts';
import { lastSettings, refKey, type VisitView } from '../../state/visits.ts';
import { PackCounter } from './pack-counter.tsx';
import { Stepper } from './stepper.tsx';

export function useStandings(view: VisitView) {
  const id = entryDraft(view.visit.id);
  const kept = draft(id);
  const texts = () => draft(id)?.texts ?? {};
  const { id: car } = view.car;
  const list = standings(view.car, texts(), lastSettings(records.value, car), lastPacks(records.value, car));
  return {
    list,
    picked: list.find(({ corner, adjuster }) => refKey({ corner, adjuster: adjuster.id }) === kept?.cursor),
    pick: (one: Standing | undefined) =>
      keepDraft(id, texts(), one ? refKey({ corner: one.corner, adjuster: one.adjuster.id }) : 'end'),
    set: ({ corner, adjuster }: Standing, text: string) =>
      keepDraft(id, { ...texts(), [standingKey(corner, adjuster.id)]: text }, kept?.cursor),
    /** A pack's thickness is what its shims make. */
    fill: ({ corner, adjuster }: Standing, shims: readonly ShimCount[]) =>
      keepDraft(
        id,
        {
          ...texts(),
          [standingKey(corner, adjuster.id)]: String(thicknessOf(shims)),
          [packKey({ corner, adjuster: adjuster.id })]: packText(shims),
        },
        kept?.cursor,
      ),
  };
}

export function StandingList({ view }: { readonly view: VisitView }) {
  const { list, picked, pick } = useStandings(view);
  usePlanAhead(view, typedRecord(view, settingsOf(list), packsOf(list)));
  useEffect(() => {
    // What comes up must not cover the row that it is about: that goes up beneath the head.
    if (picked) document.querySelector('.standing-picked')?.scrollIntoView({ block: 'start' });
  }, [picked?.corner, picked?.adjuster.id]);
  return (
    <>
      <p class="soft">Look at each one. Touch what is different.</p>
      {CORNERS.map((corner) => (
        <CornerList
          key={corner}
          corner={corner}
          list={list.filter((one) => one.corner === corner)}
          picked={picked}
          pick={pick}
        />
      ))}
      {list.some(({ unknown, adjuster }) => unknown && isEven(adjuster)) && (
        <p class="soft">
          A rod, plate or pack that you don’t know is counted from its place on the car’s build card: the change is
          right, the stop may come sooner.
        </p>
      )}
      {list.some(({ unknown, adjuster }) => unknown && !isEven(adjuster)) && (
        <p class="soft">
          What a cam, sleeve or wedge does hangs on where it stands. Look at its mark if you can; else a turn of it that
          is measured tells.
        </p>
      )}
    </>
  );
}

interface ListProps {
  readonly corner: Corner;
  readonly list: readonly Standing[];
  readonly picked: Standing | undefined;
  readonly pick: (one: Standing) => void;
}

function CornerList({ corner, list, picked, pick }: ListProps) {
  if (list.length === 0) return null;
  return (
    <section class="standing">
      <h3>
        <CornerMark corner={corner} />
      </h3>
      {list.map((one) => (
        <button
          key={one.adjuster.id}
          type="button"
          class={one === picked ? 'standing-row standing-picked' : 'standing-row'}
          aria-pressed={one === picked}
          onClick={() => pick(one)}
        >
          <span>
            {adjusterName(one.adjuster)}
            {one.shims && oneByOne(one.shims).length > 1 && <small class="soft pack-in">{inWords(one.shims)}</small>}
          </span>
          <strong>{one.unknown ? 'don’t know' : positionText(one.adjuster, one.position)}</strong>
        </button>
      ))}
    </section>
  );
}

const isEven = (adjuster: Adjuster): boolean => adjusterKinds[adjuster.kind]?.even?.(adjuster) ?? false;

/** `3 + 1.5` */
const inWords = (shims: readonly ShimCount[]): string => oneByOne(shims).map(sizeText).join(' + ');

/** The pack whose shims are being counted. */
const counting = signal<string | undefined>(undefined);

export function StandingDock({ view, onRight }: { readonly view: VisitView; readonly onRight: () => void }) {
  const { picked, pick, set, fill } = useStandings(view);
  if (!picked) return <ActionBar primary={{ label: 'These are right', onPress: onRight }} />;
  const caption = `${picked.corner} ${adjusterName(picked.adjuster)}`;
  const key = refKey({ corner: picked.corner, adjuster: picked.adjuster.id });
  if (counting.value === key) {
    return (
      <PackCounter
        caption={caption}
        adjuster={picked.adjuster}
        shims={picked.shims}
        onChange={(shims) => fill(picked, shims)}
        onDone={() => {
          counting.value = undefined;
          pick(undefined);
        }}
      />
    );
  }
  const isPack = adjusterKinds[picked.adjuster.kind]?.stack !== undefined;
  const count = () => {
    counting.value = key;
  };
  return (
    <Stepper
      caption={caption}
      corner={picked.corner}
      adjuster={picked.adjuster}
      position={picked.position}
      unknown={picked.unknown}
      onChange={(position) => set(picked, String(position))}
      actions={[
        { label: 'Don’t know', onPress: () => set(picked, UNKNOWN) },
        ...(isPack ? [{ label: 'Which shims', onPress: count }] : []),
        { label: 'Set', onPress: () => pick(undefined), main: true },
      ]}
    />
  );
}
