import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { build } from 'esbuild';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, violations } from './browser.js';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.mjs': 'text/javascript',
};

describe('the recipes', () => {
  let browser: Awaited<ReturnType<typeof openBrowser>>;
  let page: Page;
  let server: Server;
  let home = '';
  const built = mkdtempSync(join(tmpdir(), 'cuffwork-recipes-'));
  const pages: Record<string, string> = {
    '/form.html':
      '<!doctype html><html lang="en"><title>Form</title><link rel="icon" href="data:,"><main><h1>Pressure</h1><div id="root"></div></main><script src="form.js"></script>',
    '/worker.html':
      '<!doctype html><html lang="en"><title>Worker</title><link rel="icon" href="data:,"><h1>Worker</h1>',
  };
  // The same policy and import map, and documents, whose validator could try.
  const strict = readFileSync('examples/recipes/no-bundler.html', 'utf8');
  pages['/documents.html'] = strict.replace('no-bundler.js', 'documents.js');
  pages['/documents.js'] = `
    let tries = 0;
    addEventListener('securitypolicyviolation', () => (tries += 1));
    const { readDocument, screen } = await import('cuffwork/plan');
    const { outcome } = readDocument(JSON.parse(JSON.stringify(screen({ answers: {} }))));
    setTimeout(() => (document.getElementById('answer').textContent = outcome + ' ' + tries), 100);`;
  /** The files as a plain web server would give them: the recipes at the root, the packages where npm puts them. */
  const fileOf = (path: string): string => {
    if (path.startsWith('/node_modules/cuffwork/')) return path.replace('/node_modules/cuffwork/', '');
    if (path.startsWith('/node_modules/')) return path.slice(1);
    return existsSync(join(built, path)) ? join(built, path) : join('examples/recipes', path);
  };

  beforeAll(async () => {
    await build({
      stdin: {
        contents: `
          import { createElement } from 'react';
          import { createRoot } from 'react-dom/client';
          import { OcclusionForm } from './examples/recipes/form.tsx';
          createRoot(document.getElementById('root')).render(createElement(OcclusionForm));`,
        resolveDir: '.',
      },
      bundle: true,
      jsx: 'automatic',
      define: { 'process.env.NODE_ENV': '"production"' },
      outfile: join(built, 'form.js'),
    });
    await build({ entryPoints: ['examples/recipes/worker-web.ts'], bundle: true, outfile: join(built, 'worker.js') });
    server = createServer((request, response) => {
      const path = new URL(request.url!, 'http://localhost').pathname;
      const text = pages[path];
      const file = fileOf(path);
      if (text === undefined && !existsSync(file)) return void response.writeHead(404).end();
      response.setHeader('content-type', TYPES[extname(path)] ?? 'application/octet-stream');
      response.end(text ?? readFileSync(file));
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    home = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    browser = await openBrowser();
    page = await browser.newPage();
  });
  afterAll(async () => {
    await browser.close();
    server.close();
    rmSync(built, { recursive: true });
  });

  it('without a bundler: modules under a strict content-security policy', async () => {
    await page.goto(`${home}/no-bundler.html`);
    // Half of the measured 172 mmHg is 86, down to the step of 5.
    await page.getByText('Cuff pressure to set: 85 mmHg').waitFor();
    expect(browser.complaints).toEqual([]);
    // The policy is in force: a script inside the page is forbidden.
    await expect(page.addScriptTag({ content: 'globalThis.ran = true' })).rejects.toThrow();
    expect(await page.evaluate('globalThis.ran')).toBeUndefined();
  });

  it('a strict policy: documents are read and verified without a try to evaluate text', async () => {
    await page.goto(`${home}/documents.html`);
    await page.locator('#answer', { hasText: 'incomplete' }).waitFor();
    expect(await page.locator('#answer').innerText()).toBe('incomplete 0');
  });

  // The pooled curve of the thigh, seated, by hand: 72 + 1.25 × (23 + 17.9 × 51 / 10) = 214.86.
  it('a form: says what is wrong beside the field, then answers', async () => {
    await page.goto(`${home}/form.html`);
    await page.locator('#circumferenceCm').fill('20');
    await page.locator('#systolicMmHg').fill('118');
    await page.locator('#diastolicMmHg').fill('72');
    await page.getByRole('button').click();
    await page.locator('#cuffWidthCm-error', { hasText: 'cuffWidthCm is missing' }).waitFor();
    expect(await page.locator('#circumferenceCm-error').innerText()).toContain('50.8 cm');
    expect(await page.locator('[aria-invalid="true"]').count()).toBe(2);
    await page.locator('#circumferenceCm').fill('51,0');
    await page.locator('#cuffWidthCm').fill('10');
    await page.getByRole('button').click();
    await page.locator('output', { hasText: '215' }).waitFor();
    expect(await page.locator('output').innerText()).toContain('Measure it on this limb');
    expect(await violations(page)).toEqual([]);
  });

  it('a worker: moves the columns to the page', async () => {
    await page.goto(`${home}/worker.html`);
    const told = await page.evaluate(
      () =>
        new Promise<number[]>((done) => {
          const worker = new Worker('worker.js');
          worker.onmessage = ({ data }) => done([...data.value.value]);
          worker.postMessage({
            answer: 'occlusion-pressure',
            equation: 'pooled-curve-thigh-2026',
            limb: 'leg',
            circumferenceCm: new Float64Array([51]),
            systolicMmHg: 118,
            diastolicMmHg: 72,
            cuffWidthCm: 10,
            posture: 'seated',
          });
        }),
    );
    expect(told.map((value) => value.toFixed(2))).toEqual(['214.86']);
  });

  it('ask no other host', () => {
    expect(browser.elsewhere.filter((url) => !url.startsWith(home))).toEqual([]);
  });
});
