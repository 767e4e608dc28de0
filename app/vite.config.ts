/**
 * The build: one page, its chunks and its worker under `dist/`, every address relative so that any
 * sub-path of any static host serves it. Two small plugins add the content policy and the service worker.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, defineConfig, type Plugin } from 'vite';
import { CONTENT_POLICY } from './terminal/content-policy.ts';
import { textSizes } from './terminal/text-sizes.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const OUT = here('../dist');

/** Build only: the dev server injects inline styles, which this policy forbids. */
function contentPolicy(): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/** Every built file with the hash of its content; names under `assets/` carry their hash already. */
function precacheList(): { url: string; revision: string | null }[] {
  return filesOf(OUT)
    .filter((url) => url !== 'sw.js')
    .map((url) => ({
      url,
      revision: url.startsWith('assets/')
        ? null
        : createHash('sha256')
            .update(readFileSync(join(OUT, url)))
            .digest('hex')
            .slice(0, 20),
    }));
}

/** Builds `service-worker/sw.ts` to `dist/sw.js` with the list of files to keep. */
function serviceWorker(): Plugin {
  return {
    name: 'service-worker',
    apply: 'build',
    // Not closeBundle: that runs after a failed build too, and hides its error behind its own.
    writeBundle: async () => {
      await build({
        configFile: false,
        publicDir: false,
        logLevel: 'warn',
        define: {
          'process.env.NODE_ENV': '"production"',
          'self.__WB_MANIFEST': JSON.stringify(precacheList()),
        },
        build: {
          outDir: OUT,
          emptyOutDir: false,
          rolldownOptions: {
            input: here('../service-worker/sw.ts'),
            output: { format: 'iife', entryFileNames: 'sw.js' },
          },
        },
      });
    },
  };
}

export default defineConfig({
  root: here('.'),
  base: './',
  cacheDir: here('../node_modules/.cache/vite'),
  build: {
    outDir: OUT,
    emptyOutDir: true,
    // An inlined `data:` asset breaks the content policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2022',
  },
  css: { postcss: { plugins: [textSizes] } },
  worker: { format: 'es' },
  plugins: [contentPolicy(), serviceWorker()],
});
