import { adjustersOf } from '../adjuster/of-corner.ts';
import { validateCarSettings } from '../check/adjusters.ts';
import type { AdjusterRef, Car, CarSettings, Corner, Position, Round, Settings } from '../contract.ts';
import { movedOn } from '../records/rounds.ts';

/**
 * A round's positions as its car's adjusters know them. One of unknown place is counted from nobody knows where: any number
 * is one of its.
 * @throws InputError such as `rounds[0].settings.LF.rod`
 */
export function settingsOf(
  { settings, unknown = [] }: Pick<Round, 'settings' | 'unknown'>,
  car: Car,
  field: string,
): CarSettings {
  const counted = unknown.flatMap(({ corner, adjuster }) => {
    const at = settings[corner]?.[adjuster];
    const fitted = adjustersOf(car, corner).find(({ id }) => id === adjuster);
    return typeof at === 'number' && Number.isFinite(at) && fitted ? [{ corner, adjuster, at, fitted }] : [];
  });
  const checked = validateCarSettings(
    counted.reduce<CarSettings>((all, { fitted, ...one }) => placed(all, one, fitted.reference), settings),
    car,
    field,
  );
  return counted.reduce<CarSettings>((all, one) => placed(all, one, one.at), checked);
}

/** The same with one adjuster elsewhere. */
export function placed(all: CarSettings, { corner, adjuster }: AdjusterRef, at: Position): CarSettings {
  const own: Settings = { ...all[corner as Corner], [adjuster]: at };
  return { ...all, [corner]: own };
}

/** Rounds with their positions as the car knows them, those on the way among them where the rack led a move. @throws InputError */
export const settled = (rounds: readonly Round[], car: Car, field: string): readonly Round[] =>
  rounds.map((round, i) => {
    const settings = settingsOf(round, car, `${field}[${i}].settings`);
    const { moved = [], unknown = [] } = round;
    // What the rack led teaches where it stood then.
    if (moved.some(({ setBy }) => setBy)) {
      settingsOf({ settings: movedOn(settings, moved, unknown), unknown }, car, `${field}[${i}].moved`);
    }
    return { ...round, settings };
  });
