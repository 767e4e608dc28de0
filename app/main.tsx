/** First load. Opens the records, shows the app, then makes it work without the network. */
import './style/index.css';
import './shell/screens.css';
import './shell/forms.css';
import './shell/paper.css';
import './shell/wide.css';
import './shell/chosen.css';
import { render } from 'preact';
import { registerOffline } from './offline/registration.ts';
import { followAddress, route } from './routes.ts';
import { App, fetchSoon } from './shell/app.tsx';
import { heedSecondTouches } from './shell/second-touch.ts';
import { noteRows, rowsLast } from './state/first-rows.ts';
import { dressPage } from './state/preferences.ts';
import { loadRecords, records, reloadRecords } from './state/records.ts';
import { store } from './store/index.ts';

followAddress();
heedSecondTouches();
dressPage();
const root = document.getElementById('app');
if (root) render(<App />, root);
if (route.value.screen === 'visit') fetchSoon();

// A new profile starts with a car to learn on.
const loaded = loadRecords(rowsLast(), async () => (await import('./practice/install.ts')).installPracticeCar());
store.onOutsideChange(() => void reloadRecords().catch(() => undefined));
await loaded;
fetchSoon();
// Not before all is here: a part would be written back as the whole.
store.remember(() => records.value);
noteRows();
void store.lookForCutOff();
await registerOffline();
// Once the hands have begun, which comes first. Without room for it there is none.
setTimeout(() => void store.keepDaily().catch(() => undefined), 30_000);
