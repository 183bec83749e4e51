import { readFileSync } from 'node:fs';
import {
  converter,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  wcagContrast,
  type Color,
} from 'culori';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { made } from '../../docs/tools/made.js';
import { palettes } from '../../docs/tools/pictures/frame.js';

const files = await made();
const rgb = (colour: string): Color => converter('rgb')(colour)!;

describe('what in the docs is made from the code', () => {
  it.each([...files.keys()])('%s is as `npm run pictures` makes it', (file) => {
    expect(readFileSync(file, 'utf8'), 'stale: run npm run pictures').toBe(files.get(file));
  });
});

describe('the pictures', () => {
  const svgs = [...files].filter(([file]) => file.endsWith('.svg'));
  it('are all there', () => expect(svgs.length).toBe(6));

  it.each(svgs)('%s tells what it shows, and needs nothing beside it', (_file, text) => {
    const { document } = parseHTML(text);
    const svg = document.querySelector('svg')!;
    for (const id of svg.getAttribute('aria-labelledby')!.split(' ')) {
      expect(document.getElementById(id)!.textContent!.length).toBeGreaterThan(20);
    }
    expect(text).not.toMatch(/<script|href=|url\(|NaN|undefined|Infinity/);
    expect(document.querySelectorAll('path, rect, circle').length).toBeGreaterThan(5);
  });

  it.each(svgs)('%s has plain colours where no style sheet is read, and others on a dark page', (_file, text) => {
    expect(text).not.toContain('var(');
    const { document } = parseHTML(text);
    const style = document.querySelector('style')!.textContent!;
    const light = Object.values(palettes.light) as string[];
    for (const part of ['fill', 'stroke']) {
      for (const mark of Array.from(document.querySelectorAll(`[${part}^="#"]`))) {
        expect(light).toContain(mark.getAttribute(part));
        const name = Array.from(mark.classList).find((one) => one.startsWith(`${part}-`));
        expect(style, mark.outerHTML.slice(0, 120)).toContain(`.${name}{`);
      }
    }
    expect(document.querySelector('svg > text')!.textContent).toBe(document.querySelector('title')!.textContent);
  });

  // Source: WCAG 2.2, 1.4.3 (text, 4.5:1) and 1.4.11 (graphics, 3:1).
  it.each(Object.entries(palettes))('have enough contrast on %s paper', (_name, colours) => {
    for (const text of [colours.text, colours.faint]) expect(wcagContrast(text, colours.paper)).toBeGreaterThan(4.5);
    for (const mark of [colours.first, colours.second, colours.third]) {
      expect(wcagContrast(mark, colours.paper)).toBeGreaterThan(3);
    }
  });

  // A CIEDE2000 difference of 10 is plain to see side by side (common practice, no source).
  const eyes: Readonly<Record<string, (colour: string) => Color | undefined>> = {
    nothing: (colour) => rgb(colour),
    red: (colour) => filterDeficiencyProt(1)(rgb(colour)),
    green: (colour) => filterDeficiencyDeuter(1)(rgb(colour)),
    blue: (colour) => filterDeficiencyTrit(1)(rgb(colour)),
  };
  it.each(Object.entries(eyes))('keep their colours apart for eyes that lack: %s', (_name, see) => {
    const difference = differenceCiede2000();
    for (const { first, second, third } of Object.values(palettes)) {
      for (const [a, b] of [
        [first, second],
        [second, third],
        [first, third],
      ] as const) {
        expect(difference(see(a)!, see(b)!)).toBeGreaterThan(10);
      }
    }
  });
});
