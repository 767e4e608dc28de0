/** What every angle of all four wheels gains by another height, and how the body then stands. */
import type { Angle, AxleName, Car, CarSettings, Corner } from '../../../core/contract.ts';
import type { HeightEffect } from '../../../core/pose/height.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { formatLength } from '../../../core/units/length.ts';
import { engine } from '../../engine/index.ts';
import { Card } from '../../parts/card.tsx';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { hashOf } from '../../routes.ts';
import { useAsked } from '../../state/asking.ts';
import { angleWord, cornersOf } from '../../state/fields.ts';
import { units } from '../../state/preferences.ts';
import { angleText } from '../../state/units.ts';
import { why } from '../../state/why.ts';

const ROWS = ['caster', 'camber', 'toe', 'sai'] as const satisfies readonly Angle[];

interface Props {
  readonly car: Car;
  readonly raise: Readonly<Record<AxleName, number>>;
  /** Where the adjusters stood last. */
  readonly settings: CarSettings;
}

export function Gains({ car, raise, settings }: Props) {
  const { value, error } = useAsked(`height ${JSON.stringify([car, settings, raise])}`, (signal) =>
    engine.call('heightEffect', [car, settings, raise], { signal }),
  );
  if (error) return <p role="alert">{why(error, { car })}</p>;
  if (!value) return <p class="soft">Working it out…</p>;
  return (
    <>
      <AxleCard title="Front" car={car} axle="front" told={value} />
      <AxleCard title="Rear" car={car} axle="rear" told={value} />
      <Body told={value} id={car.id} />
    </>
  );
}

const show = (degrees: number | undefined): string => (degrees === undefined ? '–' : angleText(degrees, true));

/** How the body pitches, and by which wheelbase: what nobody typed says so. */
function Body({
  told: { pitch, wheelbase, usualWheelbase },
  id,
}: {
  readonly told: HeightEffect;
  readonly id: string;
}) {
  const length = wheelbaseText(wheelbase);
  return (
    <Card title="The body pitches" aside={show(pitch)}>
      <p>
        {pitch === 0 ? 'It stays level.' : pitch > 0 ? 'Its nose goes up.' : 'Its nose goes down.'} Every figure above
        is what the rack shows, with the pitch in it.
      </p>
      <p>
        Wheelbase: {usualWheelbase && 'usual '}
        {length}
        {usualWheelbase && '; type yours.'}
      </p>
      <a class="quiet height-wheelbase" href={hashOf({ screen: 'build', id })}>
        {usualWheelbase ? 'Type the wheelbase' : 'Change the wheelbase'}
      </a>
    </Card>
  );
}

const wheelbaseText = (mm: number): string => {
  const { length: unit, decimal } = units.value;
  return formatLength(mm, { unit, decimal, digits: unit === 'mm' ? 0 : 1 });
};

interface AxleProps {
  readonly title: string;
  readonly car: Car;
  readonly axle: AxleName;
  readonly told: HeightEffect;
}

function AxleCard({ title, car, axle, told }: AxleProps) {
  const kind = suspensionKinds[car[axle].suspension.kind];
  const corners = cornersOf(axle) as [Corner, Corner];
  if (kind?.points.length === 0)
    return <Card title={title}>Not known without geometry: measure once the height is set.</Card>;
  if (corners.every((corner) => !told.corners[corner])) return <Card title={title}>The links cannot go that far.</Card>;
  const pinion = kind?.rigidAxle?.onLinks ? told.pinionAngle : undefined;
  return (
    <Card title={title}>
      <GainTable corners={corners} told={told} />
      {pinion !== undefined && <p>The pinion’s nose goes up by {show(pinion)}</p>}
      {!kind?.height && (
        <p class="soft">As on leaf springs, which pitch the axle with the body. On other links: measure it.</p>
      )}
    </Card>
  );
}

function GainTable({ corners, told }: { readonly corners: readonly Corner[]; readonly told: HeightEffect }) {
  const known = (angle: Angle) => corners.some((corner) => told.corners[corner]?.[angle] !== undefined);
  return (
    <table class="paper-table height-table">
      <thead>
        <tr>
          <th scope="col">Gains{units.value.angle === 'degrees' ? ', degrees' : ''}</th>
          {corners.map((corner) => (
            <th key={corner} scope="col">
              <CornerMark corner={corner} />
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {ROWS.filter(known).map((angle) => (
          <tr key={angle}>
            <th scope="row">{angle === 'sai' ? 'SAI' : angleWord(angle)}</th>
            {corners.map((corner) => (
              <td key={corner}>{show(told.corners[corner]?.[angle])}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
