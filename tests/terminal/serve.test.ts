/** The small static server: right types, its sub-path and nothing beside it, never a file outside its folder. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveFolder } from '../../app/terminal/serve.ts';

const top = mkdtempSync(join(tmpdir(), 'cornerwright-serve-'));
let server: Server;
let port = 0;

beforeAll(async () => {
  mkdirSync(join(top, 'site', 'assets'), { recursive: true });
  writeFileSync(join(top, 'secret.txt'), 'secret');
  writeFileSync(join(top, 'site', 'index.html'), '<p>home</p>');
  writeFileSync(join(top, 'site', 'manifest.webmanifest'), '{}');
  writeFileSync(join(top, 'site', 'assets', 'a b.js'), 'x');
  server = await serveFolder({ folder: join(top, 'site'), port: 0, base: '/shop/tools/' });
  port = (server.address() as AddressInfo).port;
});
afterAll(async () => {
  await new Promise((done) => server.close(done));
  rmSync(top, { recursive: true });
});

/** The path is sent as it is: `fetch` would tidy the dots away before the server sees them. */
function get(path: string, method = 'GET'): Promise<{ status: number; type: string; body: string }> {
  return new Promise((done, fail) => {
    request({ port, path, method, host: '127.0.0.1' }, (response) => {
      let body = '';
      response.on('data', (chunk) => {
        body += chunk;
      });
      response.on('end', () =>
        done({ status: response.statusCode ?? 0, type: response.headers['content-type'] ?? '', body }),
      );
    })
      .on('error', fail)
      .end();
  });
}

describe('serveFolder', () => {
  it('serves files under its base with their types', async () => {
    expect(await get('/shop/tools/')).toEqual({ status: 200, type: 'text/html; charset=utf-8', body: '<p>home</p>' });
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

  it('says so when the port is taken', async () => {
    await expect(serveFolder({ folder: top, port })).rejects.toThrow(/EADDRINUSE/);
  });
});
