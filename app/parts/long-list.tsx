/** First load. A list of any length, drawn as far as it is seen: the next rows are drawn before the last one is reached. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

interface Props<T> {
  readonly of: readonly T[];
  readonly row: (one: T) => ComponentChildren;
  /** Another subject is another list, seen from its top. */
  readonly subject?: string;
}

/** Rows: more than a tall phone shows at once, and more than a thumb passes before the next are there. */
const FIRST = 12;
const MORE = 24;
/** How far below the glass rows are drawn. */
const AHEAD = '1200px';

export function LongList<T>({ of, row, subject = '' }: Props<T>) {
  const [seen, setSeen] = useState({ subject, rows: FIRST });
  const rows = seen.subject === subject ? seen.rows : FIRST;
  const foot = useRef<HTMLDivElement>(null);
  const isAll = rows >= of.length;
  useEffect(() => {
    if (isAll || !foot.current) return undefined;
    const watch = new IntersectionObserver(
      (marks) => {
        if (marks.some(({ isIntersecting }) => isIntersecting)) setSeen({ subject, rows: rows + MORE });
      },
      { rootMargin: AHEAD },
    );
    watch.observe(foot.current);
    return () => watch.disconnect();
  }, [subject, rows, isAll]);
  return (
    <>
      {of.slice(0, rows).map(row)}
      {!isAll && <div ref={foot} style={{ height: '1px' }} />}
    </>
  );
}
