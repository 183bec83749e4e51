import axe, { type AxeResults } from 'axe-core';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type BrowserContext, type Page } from 'playwright-core';

/** A browser of its own with nothing in it, and the pages it asks other hosts for: there should be none. */
export async function openBrowser(options: Parameters<typeof chromium.launchPersistentContext>[1] = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'cuffwork-browser-'));
  const context: BrowserContext = await chromium.launchPersistentContext(folder, {
    executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
    headless: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
    ...options,
  });
  const elsewhere: string[] = [];
  const complaints: string[] = [];
  context.on('request', (request) => {
    if (!/^(file|data):/.test(request.url())) elsewhere.push(request.url());
  });
  context.on('weberror', (error) => complaints.push(error.error().message));
  context.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  return {
    elsewhere,
    complaints,
    newPage: (): Promise<Page> => context.newPage(),
    open: async (example: 'page' | 'react'): Promise<Page> => {
      const page = context.pages()[0] ?? (await context.newPage());
      await page.goto(pathToFileURL(resolve(`examples/dist/${example}/index.html`)).href);
      return page;
    },
    close: async (): Promise<void> => {
      await context.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** What axe finds wrong with a page as it stands, each with the elements. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  // Style sheets beside a local file cannot be fetched by scripts, and no rule that is run needs them.
  const { violations: found, passes } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run: (options: object) => Promise<AxeResults> } }).axe.run({ preload: false }),
  );
  if (passes.length < 10) throw new Error('axe checked next to nothing');
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`);
}
