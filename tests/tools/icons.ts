/**
 * Draws the app's mark, an indexed cam with nine flats, its index notch and its off-centre bolt hole, and
 * writes `app/public/icons`. Run by hand after a change to the mark: `npx tsx tests/tools/icons.ts`.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright';
import { findOrInstallChromium } from './chromium.ts';

const FOLDER = fileURLToPath(new URL('../../app/public/icons', import.meta.url));
const PAPER = '#fbf8f1';
const CHALK_BLUE = '#1f5fa8';
const FLATS = 9;

/** The mark in a 512 square; `scale` leaves the margin that a maskable icon may lose. */
function mark({ scale, corner }: { scale: number; corner: number }): string {
  const point = (turn: number, radius: number): string => {
    const angle = 2 * Math.PI * (turn - 0.25);
    return `${(Math.cos(angle) * radius).toFixed(2)} ${(Math.sin(angle) * radius).toFixed(2)}`;
  };
  const cam = Array.from({ length: FLATS }, (_, flat) => point((flat + 0.5) / FLATS, 190)).join('L');
  const index = `M-26 -196L26 -196L0 -132Z`;
  return [
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512"><title>Cornerwright</title>',
    `<rect width="512" height="512" rx="${corner}" fill="${PAPER}"/>`,
    `<g transform="translate(256 256) scale(${scale})">`,
    `<path d="M${cam}Z" fill="${CHALK_BLUE}" stroke="${CHALK_BLUE}" stroke-width="24" stroke-linejoin="round"/>`,
    `<path d="${index}" fill="${PAPER}"/>`,
    `<circle cx="34" cy="30" r="66" fill="${PAPER}"/>`,
    `<path d="M34 8V52M12 30H56" stroke="${CHALK_BLUE}" stroke-width="12" stroke-linecap="round"/>`,
    '</g></svg>\n',
  ].join('');
}

const plain = mark({ scale: 1, corner: 96 });
const maskable = mark({ scale: 0.74, corner: 0 });
mkdirSync(FOLDER, { recursive: true });
writeFileSync(join(FOLDER, 'mark.svg'), plain);

const browser = await chromium.launch({ executablePath: findOrInstallChromium(), chromiumSandbox: false });
for (const [name, svg, size] of [
  ['icon-192', plain, 192],
  ['icon-512', plain, 512],
  ['maskable-512', maskable, 512],
] as const) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>html,body{margin:0;background:transparent}svg{display:block}</style>${svg}`);
  await page.screenshot({ path: join(FOLDER, `${name}.png`), omitBackground: true });
  await page.close();
}
await browser.close();
