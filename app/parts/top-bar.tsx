import type { ComponentChildren } from 'preact';
import { Plate } from './plate.tsx';

export interface TopBarProps {
  title: ComponentChildren;
  /** A link one place up, so that the phone's own back is not the only way. */
  back?: string;
  plate?: string;
  aside?: ComponentChildren;
}

/** The head of a screen: which car, its plate, or the state of what is saved. */
export function TopBar({ title, back, plate, aside }: TopBarProps) {
  return (
    <header class="top-bar">
      {back !== undefined && (
        <a class="top-bar-back" href={back}>
          <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
            <path d="M15 4 7 12l8 8" />
          </svg>
          <span class="visually-hidden">Back</span>
        </a>
      )}
      <h1 class="top-bar-title">{title}</h1>
      {aside !== undefined && <span class="soft">{aside}</span>}
      {plate && <Plate text={plate} />}
    </header>
  );
}
