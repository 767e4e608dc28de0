/** What is chosen once: units, the rack's repeatability, the theme; and the care of the records. */
import { ActionBar } from '../../parts/action-bar.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { go } from '../../routes.ts';
import { Boundary } from '../../shell/boundary.tsx';
import { Header } from '../../shell/header.tsx';
import { setTheme, setToeReference, setUnits, theme, toeReference, units } from '../../state/preferences.ts';
import { Choose } from './choose.tsx';
import { DrawerSettings } from './drawer.tsx';
import { GaugeSettings } from './gauge.tsx';
import { RecordSettings } from './records.tsx';
import { StorageState } from './storage.tsx';

export function SettingsScreen() {
  return (
    <div class="screen">
      <Header title="Settings" back={{ screen: 'cars' }} />
      <Sheet>
        <PunchedStep state="done" title="Units">
          <Boundary part="This">
            <UnitSettings />
          </Boundary>
        </PunchedStep>
        <PunchedStep state="done" title="The rack">
          <Choose
            label="Front toe is read against"
            value={toeReference.value ?? 'thrust-line'}
            onChoose={setToeReference}
            choices={[
              ['thrust-line', 'the thrust line'],
              ['centreline', 'the centre line'],
            ]}
          />
          <p class="soft">
            Most four-wheel racks read it against the thrust line. Each reading keeps its own; one is changed at its
            form.
          </p>
        </PunchedStep>
        <PunchedStep state="done" title="Gauge repeatability">
          <Boundary part="This">
            <GaugeSettings />
          </Boundary>
        </PunchedStep>
        <PunchedStep state="done" title="Shims in the drawer">
          <Boundary part="This">
            <DrawerSettings />
          </Boundary>
        </PunchedStep>
        <PunchedStep state="done" title="Look">
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
        </PunchedStep>
        <PunchedStep state="done" title="Backup">
          <Boundary part="This">
            <RecordSettings />
          </Boundary>
        </PunchedStep>
        <PunchedStep state="done" title="This phone">
          <Boundary part="This">
            <StorageState />
          </Boundary>
        </PunchedStep>
      </Sheet>
      <ActionBar
        primary={{ label: 'To the cars', onPress: () => go({ screen: 'cars' }) }}
        secondary={[{ label: 'Cautions', onPress: () => go({ screen: 'cautions' }) }]}
      />
    </div>
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
          ['degrees', 'degrees, 0.35'],
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
    </>
  );
}
