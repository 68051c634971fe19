// Opens pages in headless Chromium and holds them against the rules of WCAG 2.2 A and AA with axe-core, and looks whether anything has to
// be scrolled sideways: as they are, 320 CSS pixels wide, and at 400 % on a screen of 1280 (WCAG 2.2, 1.4.10).
//   node accessibility.mjs CHROMIUM PAGE…     with axe-core and puppeteer-core where node finds them
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { readFileSync } from 'node:fs';
import path from 'node:path';

const require = createRequire(path.join(process.cwd(), 'package.json'));
const puppeteer = require('puppeteer-core');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const [chromium, ...pages] = process.argv.slice(2);
const views = [
  { name: 'as it is', width: 1280, height: 900, deviceScaleFactor: 1 },
  { name: '320 pixels wide', width: 320, height: 640, deviceScaleFactor: 1 },
  { name: 'at 400 %', width: 320, height: 256, deviceScaleFactor: 4 },
];
const browser = await puppeteer.launch({ executablePath: chromium, args: ['--no-sandbox', '--disable-gpu'] });
let wrong = 0;
for (const file of pages) {
  for (const view of views) {
    const page = await browser.newPage();
    await page.setBypassCSP(true);
    await page.setViewport(view);
    await page.goto(pathToFileURL(file).href);
    await page.evaluate(axe);
    const found = await page.evaluate(() => axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    console.log(`${path.basename(file)}, ${view.name}: ${found.passes.length} rules pass, ${found.violations.length} do not${wide > 0 ? `, ${wide} pixels too wide` : ''}`);
    for (const violation of found.violations) {
      console.log(`  ${violation.id} (${violation.impact}): ${violation.help}, ${violation.nodes.length} times, first ${violation.nodes[0].html.slice(0, 160)}`);
    }
    wrong += found.violations.length + (wide > 0 ? 1 : 0);
    await page.close();
  }
}
await browser.close();
process.exit(wrong > 0 ? 1 : 0);
