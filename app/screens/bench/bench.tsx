/** The bench: what can be measured without a rack, a tool a screen. Opened for a visit, results go into that. */
import './bench.css';
import './drawings.css';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Card } from '../../parts/card.tsx';
import { go, hashOf, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { Lazy } from '../../shell/lazy.tsx';
import { records } from '../../state/records.ts';
import { visitView } from '../../state/visits.ts';
import { GROUPS, toolOf } from './tools.ts';

export function BenchScreen() {
  const { tool, visit } = route.value.screen === 'bench' ? route.value : { tool: '', visit: '' };
  const found = toolOf(tool);
  if (found) return <Lazy key={found.id} load={found.load} props={{ visit }} />;
  const view = visitView(records.value, visit);
  return (
    <div class="screen">
      <Header
        title="Bench"
        plate={view?.car.car.plate}
        back={view ? { screen: 'visit', id: view.visit.id } : { screen: 'cars' }}
      />
      <main class="list">
        <p class="soft">
          Measure with what you have. Each result carries its own ±
          {view
            ? ` and goes into the visit of ${view.car.car.label} in one touch.`
            : ' and goes into an open visit in one touch.'}
        </p>
        {GROUPS.map(([title, tools]) => (
          <section key={title} class="bench-group">
            <h2>{title}</h2>
            {tools.map(({ id, title: name, about }) => (
              <Card key={id} title={name} href={hashOf({ screen: 'bench', tool: id, visit })}>
                <span class="soft">{about}</span>
              </Card>
            ))}
          </section>
        ))}
      </main>
      <ActionBar
        primary={
          view
            ? { label: 'Back to the visit', onPress: () => go({ screen: 'visit', id: view.visit.id }) }
            : { label: 'To the cars', onPress: () => go({ screen: 'cars' }) }
        }
      />
    </div>
  );
}
