/** First load. Top of every screen: whose job this is, the way back, and whether everything is saved. */
import { TopBar } from '../parts/top-bar.tsx';
import { hashOf, type Route } from '../routes.ts';
import { store } from '../store/index.ts';

interface Props {
  readonly title: string;
  readonly plate?: string | undefined;
  /** Where the arrow leads. Absent on the first screen. */
  readonly back?: Route;
}

export function Header({ title, plate, back }: Props) {
  return (
    <TopBar
      title={title}
      aside={<SaveMark />}
      {...(back ? { back: hashOf(back) } : {})}
      {...(plate ? { plate } : {})}
    />
  );
}

const WORDS = { saved: 'saved', saving: 'saving', 'not-saved': 'not saved' } as const;

function SaveMark() {
  const state = store.saveState.value;
  return (
    <span class={`save-mark save-${state}`} role="status" aria-live="polite" title={store.saveMessage.value}>
      {WORDS[state]}
    </span>
  );
}
