/** The cautions in one place. They also stand where they matter. */
import { ActionBar } from '../parts/action-bar.tsx';
import { Card } from '../parts/card.tsx';
import { go } from '../routes.ts';
import { Header } from '../shell/header.tsx';

const CAUTIONS = [
  [
    'These fasteners carry the car',
    'Suspension and steering bolts hold the wheels on. The maker’s service information and torque figures, local rules and a qualified technician’s judgement go before anything this app shows.',
  ],
  [
    'Support the car',
    'Support it as the maker asks before anything is loosened. Never adjust under load where the maker forbids it.',
  ],
  [
    'Keep to the maker’s limits',
    'Keep the least thread engagement of every rod and the greatest shim stack. Replace fasteners that the maker says to use once. Never heat or bend a part to bring an angle in.',
  ],
  [
    'Torque, then measure, then drive',
    'Torque every fastener at ride height, let the car settle, measure again, then road test.',
  ],
  ['Wheel nuts', 'Torque them in the maker’s order and have them checked again after 40 to 80 km, 25 to 50 miles.'],
  [
    'Measured by hand',
    'A string, a tape or a phone is a rougher gauge than a rack. Look at the ± before you turn a rod by it.',
  ],
  [
    'Driver assistance',
    'Cars with a steering-angle sensor, cameras or radar need them set or calibrated after an alignment.',
  ],
  [
    'A plan is a prediction',
    'It is worked out from the dimensions and readings that were typed. The re-measure decides.',
  ],
  ['Torque figures', 'The app knows none. What it shows is what was typed from the maker’s information.'],
] as const;

export function CautionsScreen() {
  return (
    <div class="screen">
      <Header title="Cautions" back={{ screen: 'cars' }} />
      <main class="list">
        {CAUTIONS.map(([title, text]) => (
          <Card key={title} title={title}>
            {text}
          </Card>
        ))}
      </main>
      <ActionBar primary={{ label: 'To the cars', onPress: () => go({ screen: 'cars' }) }} />
    </div>
  );
}
