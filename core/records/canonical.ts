/** JSON with its keys in order and what is undefined left out: equal content is equal text, whoever wrote it. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((one) => canonical(one ?? null)).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value ?? null);
  const fields = value as Readonly<Record<string, unknown>>;
  // Every merge and every checksum goes through here, record by record: no lists of pairs.
  let text = '';
  for (const key of Object.keys(fields).sort()) {
    const one = fields[key];
    if (one !== undefined) text += `${text && ','}${JSON.stringify(key)}:${canonical(one)}`;
  }
  return `{${text}}`;
}
