/** A name as a file has it, as words: `upperFront` → `upper front`, `inner1` → `inner 1`, `thrust-line` → `thrust line`. */
export const spaced = (name: string): string =>
  name
    .replace(/([a-z])([A-Z0-9])/g, (_, before: string, next: string) => `${before} ${next.toLowerCase()}`)
    .replace(/[-_]/g, ' ');
