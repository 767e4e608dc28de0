/** First load. Which screen the address asks for: hash routes, so that any sub-path of any host serves the app. */
import { signal } from '@preact/signals';

export type Route =
  | { readonly screen: 'cars' }
  | { readonly screen: 'car'; readonly id: string }
  | { readonly screen: 'build'; readonly id: string }
  | { readonly screen: 'history'; readonly id: string }
  | { readonly screen: 'height'; readonly id: string }
  | { readonly screen: 'chart'; readonly id: string }
  | { readonly screen: 'visit'; readonly id: string }
  /** `tool` and `visit` are '' for the bench itself, and for no visit. */
  | { readonly screen: 'bench'; readonly tool: string; readonly visit: string }
  | { readonly screen: 'settings' }
  | { readonly screen: 'cautions' };

/** `#/car/ID/build` → the build of that car; anything unknown is the list of cars. */
export function parseRoute(hash: string): Route {
  const [place = '', rawId = '', room = ''] = hash.replace(/^#?\/?/, '').split('/');
  const id = safeDecode(rawId);
  if (place === 'car' && id) {
    if (room === 'build') return { screen: 'build', id };
    if (room === 'history' || room === 'height' || room === 'chart') return { screen: room, id };
    return { screen: 'car', id };
  }
  if (place === 'visit' && id) return { screen: 'visit', id };
  if (place === 'bench') return { screen: 'bench', tool: id === '-' ? '' : id, visit: safeDecode(room) };
  if (place === 'settings') return { screen: 'settings' };
  if (place === 'cautions') return { screen: 'cautions' };
  return { screen: 'cars' };
}

export function hashOf(route: Route): string {
  switch (route.screen) {
    case 'cars':
      return '#/';
    case 'car':
      return `#/car/${encoded(route.id)}`;
    case 'build':
    case 'history':
    case 'height':
    case 'chart':
      return `#/car/${encoded(route.id)}/${route.screen}`;
    case 'bench': {
      const { tool, visit } = route;
      return `#/bench${tool || visit ? `/${encoded(tool || '-')}` : ''}${visit ? `/${encoded(visit)}` : ''}`;
    }
    case 'visit':
      return `#/visit/${encoded(route.id)}`;
    default:
      return `#/${route.screen}`;
  }
}

/** The cars, until the address is read. */
export const route = signal<Route>({ screen: 'cars' });

/** Shows what the address asks for, now and whenever it changes. */
export function followAddress(): void {
  route.value = parseRoute(location.hash);
  addEventListener('hashchange', () => {
    route.value = parseRoute(location.hash);
    scrollTo(0, 0);
  });
}

export function go(to: Route, how: 'push' | 'replace' = 'push'): void {
  if (how === 'replace') {
    history.replaceState(null, '', hashOf(to));
    route.value = to;
  } else {
    location.hash = hashOf(to);
  }
}

/** Half a character, which an old record's id may hold, has no place in an address: it leads to no record, and throws nothing. */
const encoded = (id: string): string => encodeURIComponent(id.replace(/\p{Surrogate}/gu, '\ufffd'));

function safeDecode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}
