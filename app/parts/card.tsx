import type { ComponentChildren } from 'preact';
import type { AxleName, Corner } from '../../core/contract.ts';
import { CornerMark } from './corner-mark.tsx';

export interface CardProps {
  /** Header line; with `corner` the mark of the corner, or of both of an axle, stands before it. */
  title?: ComponentChildren;
  corner?: Corner | AxleName;
  /** At the right end of the header: a plate, a time, a count. */
  aside?: ComponentChildren;
  /** `live` is what to do next; `caution` needs reading first; `form` has a ruled header, as a move has. */
  tone?: 'plain' | 'form' | 'live' | 'caution';
  /** Makes the whole card a link or a button. */
  href?: string;
  onPick?: () => void;
  children?: ComponentChildren;
}

/** A paper card: a car in the list, a move, a note. */
export function Card({ title, corner, aside, tone = 'plain', href, onPick, children }: CardProps) {
  const name = `card card-${tone}`;
  const inside = (
    <>
      {(title !== undefined || corner) && (
        <span class="card-head">
          {corner && <CornerMark corner={corner} />}
          <strong class="card-title">{title}</strong>
          {aside !== undefined && <span class="card-aside">{aside}</span>}
        </span>
      )}
      {children !== undefined && <div class="card-body">{children}</div>}
    </>
  );
  if (href !== undefined)
    return (
      <a class={name} href={href} onClick={onPick}>
        {inside}
      </a>
    );
  if (onPick)
    return (
      <button type="button" class={name} onClick={onPick}>
        {inside}
      </button>
    );
  return <article class={name}>{inside}</article>;
}
