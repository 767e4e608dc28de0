/** What is chosen once: units, the rack's repeatability, the theme; and the care of the records. */
import type { ComponentChildren } from 'preact';
import { ActionBar } from '../../parts/action-bar.tsx';
import { LiveAngles } from '../../parts/live-angles.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { go } from '../../routes.ts';
import { Boundary } from '../../shell/boundary.tsx';
import { Header } from '../../shell/header.tsx';
import {
  distance,
  live,
  setLive,
  setShop,
  setTheme,
  setToeReference,
  setUnits,
  shopName,
  theme,
  toeReference,
  units,
} from '../../state/preferences.ts';
import { words } from '../../state/words.ts';
import { Choose } from './choose.tsx';
import { DeletedSettings } from './deleted.tsx';
import { DrawerSettings } from './drawer.tsx';
import { GaugeSettings } from './gauge.tsx';
import { RecordSettings } from './records.tsx';
import { StorageState } from './storage.tsx';

export function SettingsScreen() {
  return (
    <div class="screen">
      <Header title="Settings" back={{ screen: 'cars' }} />
      <Sheet>
        <Section title="Units">
          <UnitSettings />
        </Section>
        <Section title="The shop">
          <label class="field">
            <span>Name of the shop, for the sheet</span>
            <input
              type="text"
              maxLength={120}
              value={shopName.value}
              onInput={(event) => setShop(event.currentTarget.value)}
            />
          </label>
        </Section>
        <Section title="The rack">
          <Choose
            label="Front toe is read against"
            value={toeReference.value ?? 'thrust-line'}
            onChoose={setToeReference}
            choices={[
              ['thrust-line', 'the thrust line'],
              ['centreline', 'the centre line'],
            ]}
          />
          <LiveAngles legend={words.live({ live: 'which' })} angles={live.value.angles} onChoose={setLive} />
          <p class="soft">
            Most four-wheel racks read it against the thrust line. Each reading keeps its own; one is changed at its
            form.
          </p>
        </Section>
        <Section title="Gauge repeatability">
          <GaugeSettings />
        </Section>
        <Section title="Shims in the drawer">
          <DrawerSettings />
        </Section>
        <Section title="Look">
          <Choose
            label="Theme"
            value={theme.value}
            onChoose={setTheme}
            choices={[
              ['system', 'as the phone'],
              ['light', 'light'],
              ['dark', 'dark'],
              ['high-contrast', 'high contrast'],
            ]}
          />
        </Section>
        <Section title="Backup">
          <RecordSettings />
        </Section>
        <Section title="Deleted">
          <DeletedSettings />
        </Section>
        <Section title="This phone">
          <StorageState />
        </Section>
      </Sheet>
      <ActionBar
        primary={{ label: 'To the cars', onPress: () => go({ screen: 'cars' }) }}
        secondary={[{ label: 'Cautions', onPress: () => go({ screen: 'cautions' }) }]}
      />
    </div>
  );
}

/** A step of the sheet; what cannot be shown of it leaves the others, the backup among them. */
function Section({ title, children }: { readonly title: string; readonly children: ComponentChildren }) {
  return (
    <PunchedStep state="done" title={title}>
      <Boundary part="This">{children}</Boundary>
    </PunchedStep>
  );
}

function UnitSettings() {
  const chosen = units.value;
  return (
    <>
      <Choose
        label="Angles"
        value={chosen.angle}
        onChoose={(angle) => setUnits({ angle })}
        choices={[
          ['degrees', `degrees, 0${chosen.decimal}35`],
          ['degrees-minutes', 'minutes, 0°21′'],
        ]}
      />
      <Choose
        label="Toe"
        value={chosen.toe}
        onChoose={(toe) => setUnits({ toe })}
        choices={[
          ['angle', 'angle'],
          ['mm', 'mm at the rim'],
          ['inch', 'inch at the rim'],
        ]}
      />
      {chosen.toe === 'inch' && (
        <Choose
          label="Toe in inches"
          value={chosen.toeParts}
          onChoose={(toeParts) => setUnits({ toeParts })}
          choices={[
            ['decimal', `decimals, 0${chosen.decimal}06`],
            ['16', 'to 1/16'],
            ['32', 'to 1/32'],
          ]}
        />
      )}
      <Choose
        label="Lengths"
        value={chosen.length}
        onChoose={(length) => setUnits({ length })}
        choices={[
          ['mm', 'mm'],
          ['inch', 'inch'],
        ]}
      />
      <Choose
        label="Odometer"
        value={distance.value}
        onChoose={(distance) => setUnits({ distance })}
        choices={[
          ['km', 'km'],
          ['mi', 'miles'],
        ]}
      />
      <Choose
        label="Decimal sign"
        value={chosen.decimal}
        onChoose={(decimal) => setUnits({ decimal })}
        choices={[
          ['.', 'point, 0.35'],
          [',', 'comma, 0,35'],
        ]}
      />
      <Choose
        label="Thrust line to the right is shown as"
        value={chosen.thrust}
        onChoose={(thrust) => setUnits({ thrust })}
        choices={[
          ['right-plus', '+'],
          ['right-minus', '−'],
        ]}
      />
      <Choose
        label="SAI"
        value={chosen.sai ? 'yes' : 'no'}
        onChoose={(sai) => setUnits({ sai: sai === 'yes' })}
        choices={[
          ['no', 'not taken'],
          ['yes', 'taken'],
        ]}
      />
      <Choose
        label="Ride heights, before the angles"
        value={chosen.heights ? 'yes' : 'no'}
        onChoose={(heights) => setUnits({ heights: heights === 'yes' })}
        choices={[
          ['no', 'not taken'],
          ['yes', 'taken'],
        ]}
      />
    </>
  );
}
