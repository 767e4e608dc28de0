/** First load. Opens the records, shows the app, then makes it work without the network. */
import './style/index.css';
import './shell/screens.css';
import './shell/forms.css';
import './shell/paper.css';
import { render } from 'preact';
import { registerOffline } from './offline/registration.ts';
import { followAddress } from './routes.ts';
import { App } from './shell/app.tsx';
import { dressPage } from './state/preferences.ts';
import { loadRecords, records, reloadRecords } from './state/records.ts';
import { store } from './store/index.ts';

followAddress();
dressPage();
const root = document.getElementById('app');
if (root) render(<App />, root);

// A new profile starts with a car to learn on.
await loadRecords(async () => (await import('./practice/install.ts')).installPracticeCar());
store.remember(() => records.value);
store.onOutsideChange(() => void reloadRecords().catch(() => undefined));
await registerOffline();
