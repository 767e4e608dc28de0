/** The small static server: right types, its sub-path and nothing beside it, never a file outside its folder. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SECURITY_HEADERS, serveFolder } from '../../app/terminal/serve.ts';

const top = mkdtempSync(join(tmpdir(), 'cornerwright-serve-'));
let server: Server;
let port = 0;

beforeAll(async () => {
  mkdirSync(join(top, 'site', 'assets'), { recursive: true });
  writeFileSync(join(top, 'secret.txt'), 'secret');
  writeFileSync(join(top, 'site', 'index.html'), '<p>home</p>');
  writeFileSync(join(top, 'site', 'manifest.webmanifest'), '{}');
  writeFileSync(join(top, 'site', 'assets', 'a b.js'), 'x');
  symlinkSync(join(top, 'secret.txt'), join(top, 'site', 'out.txt'));
  symlinkSync(top, join(top, 'site', 'away'));
  symlinkSync(join(top, 'site', 'assets', 'a b.js'), join(top, 'site', 'within.js'));
  symlinkSync('round', join(top, 'site', 'round'));
  server = await serveFolder({ folder: join(top, 'site'), port: 0, base: '/shop/tools/' });
  port = (server.address() as AddressInfo).port;
});
afterAll(async () => {
  await new Promise((done) => server.close(done));
  rmSync(top, { recursive: true });
});

interface Answer {
  readonly status: number;
  readonly type: string;
  readonly body: string;
  readonly headers: IncomingHttpHeaders;
}

/** The path is sent as it is: `fetch` would tidy the dots away before the server sees them. */
function get(path: string, method = 'GET'): Promise<Answer> {
  return new Promise((done, fail) => {
    request({ port, path, method, host: '127.0.0.1' }, (response) => {
      let body = '';
      response.on('data', (chunk) => {
        body += chunk;
      });
      response.on('end', () =>
        done({
          status: response.statusCode ?? 0,
          type: response.headers['content-type'] ?? '',
          body,
          headers: response.headers,
        }),
      );
    })
      .on('error', fail)
      .end();
  });
}

describe('serveFolder', () => {
  it('serves files under its base with their types', async () => {
    expect(await get('/shop/tools/')).toMatchObject({
      status: 200,
      type: 'text/html; charset=utf-8',
      body: '<p>home</p>',
    });
    expect(await get('/shop/tools/?utm=1')).toMatchObject({ status: 200, body: '<p>home</p>' });
    expect((await get('/shop/tools/manifest.webmanifest')).type).toBe('application/manifest+json; charset=utf-8');
    expect(await get('/shop/tools/assets/a%20b.js')).toMatchObject({
      status: 200,
      type: 'text/javascript; charset=utf-8',
      body: 'x',
    });
    expect(await get('/shop/tools/', 'HEAD')).toMatchObject({ status: 200, body: '' });
  });

  it('has nothing else', async () => {
    for (const path of ['/', '/index.html', '/shop/tools', '/shop/tools/none.js', '/shop/tools/assets', '/%E0%A4%A']) {
      expect((await get(path)).status, path).toBe(404);
    }
  });

  it('never leaves its folder', async () => {
    for (const dots of ['../secret.txt', '..%2fsecret.txt', '%2e%2e/secret.txt', 'assets/..%2f..%2fsecret.txt']) {
      const { status, body } = await get(`/shop/tools/${dots}`);
      expect(status, dots).toBe(404);
      expect(body, dots).not.toContain('secret');
    }
    expect((await get('/shop/tools/index.html%00.js')).status).toBe(404);
  });

  it('answers what is no file, and goes on', async () => {
    const long = 'a'.repeat(300);
    for (const path of ['index.html/x', 'index.html/', long, `${long}/${long}`, 'round', 'assets/']) {
      expect((await get(`/shop/tools/${path}`)).status, path).toBe(404);
    }
    expect((await get('/shop/tools/')).status).toBe(200);
  });

  it('follows no link out of its folder, and one within', async () => {
    for (const path of ['out.txt', 'away/secret.txt']) {
      const { status, body } = await get(`/shop/tools/${path}`);
      expect(status, path).toBe(404);
      expect(body).not.toContain('secret');
    }
    expect(await get('/shop/tools/within.js')).toMatchObject({ status: 200, body: 'x' });
  });

  it.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('does not answer %s', async (method) => {
    expect((await get('/shop/tools/', method)).status).toBe(405);
  });

  it('sends the policy with every answer: one in the page alone binds no worker', async () => {
    for (const path of ['/shop/tools/', '/shop/tools/assets/a%20b.js', '/shop/tools/none.js']) {
      const { headers } = await get(path);
      expect(headers, path).toMatchObject(SECURITY_HEADERS);
      expect(headers['content-security-policy']).toContain("default-src 'self'");
      expect(headers['x-content-type-options']).toBe('nosniff');
    }
  });

  it('sends what the README has other hosts send', () => {
    const readme = readFileSync(fileURLToPath(new URL('../../README.md', import.meta.url)), 'utf8');
    const told = readme.split('\n').flatMap((line) => {
      const [, name, value] = /^add_header (\S+) "(.*)" always;$/.exec(line) ?? [];
      return name ? [[name.toLowerCase(), value]] : [];
    });
    expect(Object.fromEntries(told)).toEqual(SECURITY_HEADERS);
  });

  it('says so when the port is taken', async () => {
    await expect(serveFolder({ folder: top, port })).rejects.toThrow(/EADDRINUSE/);
  });
});
