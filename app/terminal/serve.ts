/**
 * Serves the built app on this machine and prints the address: what any static host does, and no more.
 * Node's own http only, so that it runs from a fresh clone. `--port N` (default 4173), `--base /sub/path/`.
 */
import { createReadStream, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { pipeline } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

export interface ServeOptions {
  /** Folder to serve. */
  readonly folder: string;
  readonly port: number;
  /** Path the folder is served under; begins and ends with a slash. */
  readonly base?: string;
  readonly host?: string;
}

/** Starts the server; resolves when it listens, rejects when the port is taken. */
export function serveFolder({ folder, port, base = '/', host = '127.0.0.1' }: ServeOptions): Promise<Server> {
  const root = resolve(folder);
  const server = createServer((request, response) => {
    const file = fileFor(request.url ?? '/', root, base);
    if (!file) {
      response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('Not found\n');
      return;
    }
    response.writeHead(200, {
      'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
      // The service worker does the keeping; the browser must see a new build at once.
      'cache-control': 'no-cache',
    });
    if (request.method === 'HEAD') response.end();
    // A file that goes while it is sent, or a client that leaves, ends this answer and nothing else.
    else pipeline(createReadStream(file), response, () => {});
  });
  return new Promise((done, fail) => {
    server.once('error', fail);
    server.listen(port, host, () => done(server));
  });
}

/** The file that an address names, or nothing: never one outside `root`. */
function fileFor(url: string, root: string, base: string): string | undefined {
  let path: string;
  try {
    path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  } catch {
    return undefined;
  }
  if (!path.startsWith(base) || path.includes('\0')) return undefined;
  const wanted = path.endsWith('/') ? `${path}index.html` : path;
  const file = join(root, wanted.slice(base.length));
  if (!file.startsWith(root + sep)) return undefined;
  return statSync(file, { throwIfNoEntry: false })?.isFile() ? file : undefined;
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const { values } = parseArgs({
    options: { port: { type: 'string', default: '4173' }, base: { type: 'string', default: '/' } },
  });
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 1 || port > 65535) {
    console.error(`--port: "${values.port}" is not allowed; allowed: a whole number from 1 to 65535`);
    process.exit(2);
  }
  const base = `/${values.base.replace(/^\/+|\/+$/g, '')}/`.replace('//', '/');
  const folder = fileURLToPath(new URL('../../dist', import.meta.url));
  try {
    await serveFolder({ folder, port, base });
    console.log(`Cornerwright is at http://localhost:${port}${base}  (Ctrl+C stops it)`);
  } catch (error) {
    console.error(
      `The address could not be opened: ${(error as Error).message}. Try another: npm start -- --port 4180`,
    );
    process.exit(1);
  }
}
