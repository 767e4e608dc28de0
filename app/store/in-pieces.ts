/** First load. A list a piece at a time, so that nothing of it is done all at once. */
export function* inPieces<T>(list: readonly T[], size: number): Generator<readonly T[]> {
  for (let from = 0; from < list.length; from += size) yield list.slice(from, from + size);
}
