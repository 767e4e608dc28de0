/**
 * What is for paper alone: as many pages as it takes, each headed with what it is of and when. Made when it is printed,
 * at once, as the browser does not wait; what is on the screen stays off the paper.
 */
import './printed.css';
import { type ComponentChildren, render } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Plate } from './plate.tsx';

export interface PrintedProps {
  /** What stands at the head of each page: the car, its plate, what it is and the day. */
  readonly title: string;
  readonly plate?: string | undefined;
  readonly what: string;
  readonly day: string;
  /** Asked when it is printed; no page is longer than the paper. */
  readonly pages: () => readonly ComponentChildren[];
}

export function Printed(props: PrintedProps) {
  const place = useRef<HTMLDivElement>(null);
  const latest = useRef(props);
  latest.current = props;
  useEffect(() => {
    const make = () => place.current && render(<Pages {...latest.current} />, place.current);
    const clear = () => place.current && render(null, place.current);
    addEventListener('beforeprint', make);
    addEventListener('afterprint', clear);
    return () => {
      removeEventListener('beforeprint', make);
      removeEventListener('afterprint', clear);
    };
  }, []);
  return <div class="printed" ref={place} />;
}

function Pages({ title, plate, what, day, pages }: PrintedProps) {
  const all = pages();
  return (
    <>
      {all.map((page, i) => (
        <section key={i} class="printed-page">
          <header class="printed-head">
            <strong>{title}</strong>
            {plate && <Plate text={plate} />}
            <span>{what}</span>
            <span>{day}</span>
            <span>
              page {i + 1} of {all.length}
            </span>
          </header>
          {page}
        </section>
      ))}
    </>
  );
}

/** In parts of about the same size, none larger than `most`, each with the place of its first. */
export function inParts<T>(
  list: readonly T[],
  most: number,
): readonly { readonly from: number; readonly of: readonly T[] }[] {
  const count = Math.ceil(list.length / most);
  const size = Math.ceil(list.length / Math.max(1, count));
  return Array.from({ length: count }, (_, i) => ({ from: i * size, of: list.slice(i * size, (i + 1) * size) }));
}
