/** First load. Opens the records, shows the app, then makes it work without the network. */
import './style/index.css';
import './screens/screens.css';
import { render } from 'preact';
import { registerOffline } from './offline/registration.ts';
import { App } from './shell/app.tsx';
import { loading, loadRecords, records, reloadRecords } from './state/records.ts';
import { store } from './store/index.ts';

const root = document.getElementById('app');
if (root) render(<App />, root);

await loadRecords();
store.onOutsideChange(() => void reloadRecords().catch(() => undefined));
// A new profile starts with a car to learn on.
if (loading.value === 'ready' && records.value.cars.length === 0) {
  const { installPracticeCar } = await import('./practice/install.ts');
  installPracticeCar();
}
await registerOffline();
