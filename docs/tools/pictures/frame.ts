import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';

/** Colours by their job; each is a variable of the picture, so that it follows a dark page. */
export const ink = {
  text: 'var(--text)',
  faint: 'var(--faint)',
  rule: 'var(--rule)',
  paper: 'var(--paper)',
  first: 'var(--first)',
  second: 'var(--second)',
  third: 'var(--third)',
} as const;

/** The colours themselves; tests/docs/made.test.ts holds them apart for eyes that do not tell red, green or blue. */
export const palettes = {
  light: {
    paper: '#fdfcf9',
    text: '#23272b',
    faint: '#666c72',
    rule: '#dedbd3',
    first: '#08786f',
    second: '#b8500a',
    third: '#472a92',
  },
  dark: {
    paper: '#171b1f',
    text: '#e7e4dd',
    faint: '#a3a8ad',
    rule: '#363c42',
    first: '#6fd6cf',
    second: '#f0a050',
    third: '#9a86ee',
  },
} as const;

const variables = (palette: Readonly<Record<string, string>>): string =>
  Object.entries(palette)
    .map(([name, colour]) => `--${name}:${colour}`)
    .join(';');

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** What a picture is called, and what it says to who cannot see it. */
export interface Words {
  readonly title: string;
  readonly description: string;
}

/** A plot as the text of an SVG file that needs nothing beside it. */
export function draw({ title, description }: Words, options: Plot.PlotOptions): string {
  const { document } = parseHTML('<html><body></body></html>');
  const plot = Plot.plot({
    width: 800,
    document: document as unknown as Document,
    className: 'plot',
    style: { fontSize: '13px' },
    ...options,
  });
  const [, left, top, width, height] = /viewBox="([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+)"/.exec(plot.outerHTML)!;
  const style = [
    `svg{${variables(palettes.light)};font:13px system-ui,sans-serif;color:var(--text)}`,
    `@media(prefers-color-scheme:dark){svg{${variables(palettes.dark)}}}`,
    'text{white-space:pre}',
  ].join('');
  const inner = plot.innerHTML
    .replace(/<style>[\s\S]*?<\/style>/, '')
    // Two decimals of a pixel are more than an eye sees, and the same on every machine.
    .replaceAll(/-?\d+\.\d{3,}/g, (digits) => String(Number(Number(digits).toFixed(2))))
    .replaceAll(/<(g|path|text|line|rect|circle)/g, '\n<$1');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${[left, top, width, height].join(' ')}" width="${width}" height="${height}" role="img" aria-labelledby="title description" fill="currentColor" text-anchor="middle">`,
    `<title id="title">${escaped(title)}</title>`,
    `<desc id="description">${escaped(description)}</desc>`,
    `<style>${style}</style>`,
    `<rect width="${width}" height="${height}" rx="6" fill="var(--paper)"/>${inner}`,
    '</svg>',
    '',
  ].join('\n');
}

/** Words on a picture, with a halo of paper that keeps them apart from what they stand on. */
export const words = { stroke: ink.paper, strokeWidth: 4 } as const;

/** Numbers from one to another, both included. */
export const range = (from: number, to: number, step = 1): number[] =>
  Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, index) => from + index * step);

/** Places of panels, left to right and top to bottom. */
export const panels = <T>(items: readonly T[], columns: number): { item: T; column: number; row: number }[] =>
  items.map((item, index) => ({ item, column: index % columns, row: Math.floor(index / columns) }));
