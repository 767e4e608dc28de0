/**
 * Serves the built app on this machine and prints the address: what any static host does, and no more.
 * Node's own http only, so that it runs from a fresh clone. `--port N` (default 4173), `--base /sub/path/`.
 */
import { createReadStream, realpathSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { pipeline } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { CONTENT_POLICY } from './content-policy.ts';

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

/**
 * What the page's own policy says, as a header: a policy in the page binds no worker. Nothing may be framed, guessed, or
 * told where it was linked from.
 */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': `${CONTENT_POLICY}; frame-ancestors 'none'`,
  'cross-origin-opener-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
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
  const root = realpathSync(folder);
  const server = createServer((request, response) => {
    const refuse = (status: number, words: string, more = {}): void => {
      const headers = { ...SECURITY_HEADERS, 'content-type': 'text/plain; charset=utf-8', ...more };
      response.writeHead(status, headers).end(request.method === 'HEAD' ? undefined : `${words}\n`);
    };
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      return refuse(405, 'Only GET and HEAD', { allow: 'GET, HEAD' });
    }
    const file = fileFor(request.url ?? '/', root, base);
    if (!file) return refuse(404, 'Not found');
    response.writeHead(200, {
      ...SECURITY_HEADERS,
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
  try {
    // Where it really is: a link may lead out of the folder.
    const file = realpathSync(join(root, wanted.slice(base.length)));
    return file.startsWith(root + sep) && statSync(file).isFile() ? file : undefined;
  } catch {
    // There is none, its name is too long, a file is taken for a folder, links go round in a circle.
    return undefined;
  }
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
