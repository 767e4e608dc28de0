/** The same function, each answer worked out once: several tests look at the plans of one seed. */
export function remembered<K extends number | string, T>(work: (key: K) => T): (key: K) => T {
  const known = new Map<K, T>();
  return (key) => {
    if (!known.has(key)) known.set(key, work(key));
    return known.get(key) as T;
  };
}
