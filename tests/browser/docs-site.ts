/*
 * Looks at the docs’ site in a real browser: nothing comes from another host, formulas and pictures are shown, and
 * axe finds no violation, light and dark, wide and narrow. Run by `.ci/docs`, after `npm run docs`.
 */
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { AxeResults } from 'axe-core';
import { chromium } from 'playwright-core';

const PAGES = [
  'index.html',
  'documents/Choosing_an_equation.html',
  'documents/Cuff_width.html',
  'documents/Glossary.html',
  'documents/Publications.html',
  'modules/cuffwork.html',
  'functions/cuffwork.estimateOcclusionPressure.html',
  'functions/cuffwork_equations.widthRatio.html',
  'variables/cuffwork.equations.html',
  'interfaces/cuffwork.Answer.html',
];
/** The front page is held to every rule of axe, good practice included. */
const EVERY_RULE = 'axe.run()';
/** The others to WCAG 2.2. */
const WCAG_RULES = "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] })";
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const profile = mkdtempSync(join(tmpdir(), 'cuffwork-browser-'));
const flags = ['gpu', 'quic', 'background-networking', 'component-update', 'sync'].map((part) => `--disable-${part}`);
const context = await chromium.launchPersistentContext(profile, {
  executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--no-first-run', ...flags],
});
const elsewhere: string[] = [];
context.on('request', (request) => void (/^(file|data):/.test(request.url()) || elsewhere.push(request.url())));

const found: string[] = [];
let looks = 0;
try {
  const page = await context.newPage();
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const width of [1280, 380]) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      await page.setViewportSize({ width, height: 900 });
      for (const name of PAGES) {
        await page.goto(pathToFileURL(resolve('docs/site', name)).href);
        await page.waitForFunction('getComputedStyle(document.body).display !== "none"');
        const seen = (await page.evaluate(`({
          wide: document.documentElement.scrollWidth,
          pictures: [...document.images].map((image) => image.naturalWidth),
          formulas: [...document.querySelectorAll('.formula')].map((formula) => formula.querySelector('.katex-html').getBoundingClientRect().height),
        })`)) as { wide: number; pictures: number[]; formulas: number[] };
        if (seen.wide > width) found.push(`${name} is ${seen.wide} px wide on a page of ${width}`);
        assert.ok(
          seen.pictures.every((size) => size > 0),
          `${name}: a picture is missing`,
        );
        if (name.includes('widthRatio')) assert.ok(seen.formulas[0]! > 30, `${name}: the formula is not typeset`);
        await page.evaluate(axe);
        const { violations } = (await page.evaluate(name === 'index.html' ? EVERY_RULE : WCAG_RULES)) as AxeResults;
        for (const { id, nodes } of violations) {
          found.push(`${name}, ${colorScheme}, ${width} px: ${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
        }
        looks += 1;
      }
    }
  }
} finally {
  await context.close();
  rmSync(profile, { recursive: true, force: true });
}
assert.deepEqual(elsewhere, [], 'the site asks other hosts');
assert.deepEqual(found, [], 'what should not be');
console.log(`docs site: ${looks} looks at ${PAGES.length} pages, no violation`);
