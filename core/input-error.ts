/** Input that is refused: names the field, shows the value, says what is allowed. */
export class InputError extends Error {
  override readonly name = 'InputError';
  constructor(
    readonly field: string,
    readonly value: unknown,
    readonly allowed: string,
  ) {
    super(`${field}: ${show(value)} is not allowed; allowed: ${allowed}`);
  }
}

/** A value as a person would recognise it, cut to a length that fits a phone. */
function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? String(value));
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
