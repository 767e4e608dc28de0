/** Lines of a text that comes in pieces of any size. */
import { InputError } from '../input-error.ts';

/**
 * Each without its end, be that of Unix or of Windows; what follows the last one is a line unless it is empty.
 * @param most characters of a line
 * @throws InputError for a longer one, as soon as that is known
 */
export async function* linesOf(chunks: AsyncIterable<string>, field: string, most: number): AsyncGenerator<string> {
  let begun: string[] = [];
  let length = 0;
  const grow = (part: string): void => {
    length += part.length;
    if (length > most) throw new InputError(field, 'text', { is: 'text', least: 0, most });
    begun.push(part);
  };
  const line = (): string => {
    const text = begun.join('');
    begun = [];
    length = 0;
    return text.endsWith('\r') ? text.slice(0, -1) : text;
  };
  for await (const chunk of chunks) {
    let from = 0;
    for (let end = chunk.indexOf('\n'); end >= 0; end = chunk.indexOf('\n', from)) {
      grow(chunk.slice(from, end));
      yield line();
      from = end + 1;
    }
    if (from < chunk.length) grow(chunk.slice(from));
  }
  if (length > 0) yield line();
}
