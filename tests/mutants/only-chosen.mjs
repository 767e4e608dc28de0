/**
 * A plugin of Stryker's that leaves out every piece of code in which no chosen place lies. Stryker itself takes ranges, and
 * everything inside a range: of a chosen function all that it is made of.
 */
import { relative } from 'node:path';

const before = (a, b) => a.line < b.line || (a.line === b.line && a.column <= b.column);

function shouldLeaveOut(options) {
  const chosen = new Map();
  for (const range of options.mutate) {
    const [, file, ...numbers] = /^(.*):(\d+):(\d+)-(\d+):(\d+)$/.exec(range);
    const [line, column, lastLine, lastColumn] = numbers.map(Number);
    const place = { start: { line, column }, end: { line: lastLine, column: lastColumn } };
    chosen.set(file, [...(chosen.get(file) ?? []), place]);
  }
  return {
    shouldIgnore({ node, hub }) {
      const places = chosen.get(relative(process.cwd(), hub.file.opts.filename).replaceAll('\\', '/')) ?? [];
      const holds = places.some(({ start, end }) => before(node.loc.start, start) && before(end, node.loc.end));
      return holds ? undefined : 'not chosen';
    },
  };
}
shouldLeaveOut.inject = ['options'];

export const strykerPlugins = [{ kind: 'Ignore', name: 'only-chosen', factory: shouldLeaveOut }];
