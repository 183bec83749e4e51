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
import { chromium, type Page } from 'playwright-core';

const PAGES = [
  'index.html',
  'course/start-here.html',
  'course/why-it-may-work.html',
  'course/a-pressure.html',
  'course/exercises.html',
  'guide/choosing-an-equation.html',
  'guide/pressure.html',
  'guide/plan.html',
  'guide/equations.html',
  'guide/how-wrong-is-it.html',
  'guide/glossary.html',
  'guide/publications.html',
  'api/cuffwork.html',
  'api/estimateOcclusionPressure.html',
  'api/targetCuffPressure.html',
  'api/widthRatio.html',
  'api/equations.html',
  'type/Answer.html',
  'source/pressure/target.ts.html',
  'exercises/index.html',
  'slides/index.html',
  'stories/knee.html',
];
/** What people type, each with a page that the first three results of the search must have. */
const TERMS: Readonly<Record<string, string>> = {
  'sickle cell': 'guide/cautions.html',
  '1RM': 'guide/loads.html',
  'limb occlusion pressure': 'course/a-pressure.html',
  AOP: 'guide/pressure.html',
  Doppler: 'guide/pressure.html',
  'cuff width': 'api/correctForCuffWidth.html',
  posture: 'api/correctForPosture.html',
  reperfusion: 'guide/count.html',
  '30-15-15-15': 'guide/count.html',
  'repetitions in reserve': 'api/repetitionsInReserveFromRpe.html',
  Epley: 'api/epley.html',
  'muscle breakdown': 'guide/cautions.html',
  'blood clot': 'guide/cautions.html',
  pregnancy: 'guide/cautions.html',
  'growth hormone': 'course/why-it-may-work.html',
  Achilles: 'course/why-it-may-work.html',
  hypertension: 'guide/cautions.html',
  numbness: 'guide/cautions.html',
  'volume load': 'guide/count.html',
  'limits of agreement': 'guide/for-research.html',
  'percent of LOP': 'guide/pressure.html',
  'how to screen': 'guide/screen.html',
  'stop criteria': 'guide/cautions.html',
  'store in a database': 'guide/store.html',
  'express server': 'guide/recipes.html',
  ICC: 'guide/for-research.html',
  knee: 'stories/knee.html',
};
/** The front page is held to every rule of axe, good practice included. */
const EVERY_RULE = "axe.run({ rules: { 'target-size': { enabled: true } } })";
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
  // Two pages at once: most of the time one of them waits.
  const look = async (page: Page, colorScheme: 'light' | 'dark'): Promise<void> => {
    for (const width of [1280, 380]) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      await page.setViewportSize({ width, height: 900 });
      for (const name of PAGES) {
        await page.goto(pathToFileURL(resolve('docs/site', name)).href);
        await page.waitForFunction('getComputedStyle(document.body).display !== "none"');
        const seen = (await page.evaluate(`({
          wide: document.documentElement.scrollWidth,
          pictures: [...document.images].map((image) => image.naturalWidth),
          formulas: [...document.querySelectorAll('.formula .katex-html')].map((formula) => formula.getBoundingClientRect().height),
        })`)) as { wide: number; pictures: number[]; formulas: number[] };
        if (seen.wide > width) found.push(`${name} is ${seen.wide} px wide on a page of ${width}`);
        assert.ok(
          seen.pictures.every((size) => size > 0),
          `${name}: a picture is missing`,
        );
        if (name.endsWith('widthRatio.html')) assert.ok(seen.formulas[0]! > 30, `${name}: the formula is not typeset`);
        await page.evaluate(axe);
        const { violations } = (await page.evaluate(name === 'index.html' ? EVERY_RULE : WCAG_RULES)) as AxeResults;
        for (const { id, nodes } of violations) {
          found.push(`${name}, ${colorScheme}, ${width} px: ${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
        }
        looks += 1;
      }
    }
  };
  const dark = await context.newPage();
  await Promise.all([look(page, 'light'), look(dark, 'dark')]);
  // A page behind another does not draw, and a search draws its results.
  await dark.close();
  await page.bringToFront();

  const site = (name: string): string => pathToFileURL(resolve('docs/site', name)).href;
  for (const [term, wanted] of Object.entries(TERMS)) {
    await page.goto(site('index.html'));
    await page.click('#tsd-search-trigger');
    await page.fill('#tsd-search-input', term);
    await page.waitForSelector('#tsd-search-results li a');
    const results = (await page.evaluate(
      `[...document.querySelectorAll('#tsd-search-results li a')].slice(0, 3).map((link) => link.href)`,
    )) as string[];
    if (!results.includes(site(wanted))) found.push(`search for ${term}: no ${wanted} in ${results.join(', ')}`);
  }

  // A student with a phone: from the front page to the course, to the exercises, to a checked number.
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(site('index.html'));
  await page.click('[role="main"] a:has-text("Start here")');
  await page.click('[role="main"] a:has-text("Exercises")');
  await page.waitForSelector('h1:has-text("Exercises")');
  await page.click('[role="main"] a:has-text("do them in the browser")');
  // 70 / 100 × 142 = 99.4; down to fives, 95.
  for (const [number, text] of [
    ['99.4', 'The last step is missing'],
    ['95', 'Right: 95 mmHg.'],
  ] as const) {
    await page.fill('#number-0', number);
    await page.press('#number-0', 'Enter');
    const message = (await page.textContent('#result-0')) ?? '';
    if (!message.includes(text)) found.push(`exercise 1, ${number}: ${message}`);
  }
} finally {
  await context.close();
  rmSync(profile, { recursive: true, force: true });
}
assert.deepEqual(elsewhere, [], 'the site asks other hosts');
assert.deepEqual(found, [], 'what should not be');
console.log(
  `docs site: ${looks} looks at ${PAGES.length} pages, no violation; ${Object.keys(TERMS).length} searches; an exercise checked`,
);
