// Draws the icons of the installed app from their SVG: npx tsx tests/icons/draw-icons.ts
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const folder = fileURLToPath(new URL('../../public/', import.meta.url));
const icons = [
  { from: 'icon.svg', to: 'icon-192.png', pixels: 192 },
  { from: 'icon.svg', to: 'icon-512.png', pixels: 512 },
  { from: 'icon-maskable.svg', to: 'icon-maskable-512.png', pixels: 512 },
] as const;

const browser = await chromium.launch({
  executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
for (const { from, to, pixels } of icons) {
  const page = await browser.newPage({ viewport: { width: pixels, height: pixels } });
  const drawing = readFileSync(folder + from, 'utf8');
  await page.setContent(`<style>body { margin: 0 } svg { display: block }</style>${drawing}`);
  await page.screenshot({ path: folder + to, omitBackground: true });
  await page.close();
}
await browser.close();
