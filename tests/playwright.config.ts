/** Chromium on the built app in `dist/`: `npm run e2e` builds first. */
import { defineConfig } from '@playwright/test';
import { findOrInstallChromium, findOrInstallShell } from './tools/chromium.ts';

// Workers read this file again: they take the path from here instead of looking a second time.
process.env.CHROMIUM_PATH ??= findOrInstallChromium();
process.env.CHROMIUM_SHELL_PATH ??= findOrInstallShell();

export default defineConfig({
  testDir: 'browser',
  testMatch: '**/*.spec.ts',
  outputDir: '../test-results',
  workers: 2,
  // Test by test, so that no worker is left with a long file when the other has none.
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  timeout: 120_000,
  expect: { timeout: 20_000 },
  reporter: 'list',
  use: {
    viewport: { width: 430, height: 932 },
    hasTouch: true,
    isMobile: true,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    // What is killed, and what is installed, runs in the whole browser that a phone has: see browser/phone.ts.
    launchOptions: {
      executablePath: process.env.CHROMIUM_SHELL_PATH,
      chromiumSandbox: false,
      // Letters as high and wide as a phone has them: the shell alone would fit them to whole pixels.
      args: ['--font-render-hinting=none'],
    },
    // To keep every built file costs a test half a second: only what is about that has a service worker.
    serviceWorkers: 'block',
    // To note what is done and asked of the network took a twentieth of all the time, pictures of every step a fifth: for
    // one test there is `--trace on`.
    trace: 'off',
    screenshot: 'only-on-failure',
  },
});
