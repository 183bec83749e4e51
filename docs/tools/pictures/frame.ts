import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import { escaped } from '../escaped.js';

/** Colours by their job: names until the picture is done, then plain colours that follow a dark page. */
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

/** The rules that a dark page changes the colours by; without them, each mark has its plain colour. */
const dark = (['fill', 'stroke'] as const)
  .flatMap((part) => Object.entries(palettes.dark).map(([name, colour]) => `.${part}-${name}{${part}:${colour}}`))
  .join('');

/** `fill="var(--first)"` as a plain colour, with a class for a dark page: word processors and slides know no variables. */
function plainColours(svg: string): string {
  return svg.replace(/<\w[^>]*>/g, (tag) => {
    const classes: string[] = [];
    const plain = tag.replace(/ (fill|stroke)="var\(--(\w+)\)"/g, (_all, part: string, name: string) => {
      classes.push(`${part}-${name}`);
      return ` ${part}="${palettes.light[name as keyof typeof palettes.light]}"`;
    });
    return classes.length === 0 ? tag : plain.replace(/^<\w+/, (start) => `${start} class="${classes.join(' ')}"`);
  });
}

/** What a picture is called, and what it says to who cannot see it. */
export interface Words {
  readonly title: string;
  /** What its marks are, under the title. */
  readonly legend?: string;
  readonly description: string;
}

/** Room for the title, and for the legend under it. */
const HEAD = 34;
const LEGEND = 18;

/** A plot as the text of an SVG file that needs no other file. */
export function draw({ title, legend, description }: Words, options: Plot.PlotOptions): string {
  const { document } = parseHTML('<html><body></body></html>');
  const plot = Plot.plot({
    width: 800,
    document: document as unknown as Document,
    className: 'plot',
    style: { fontSize: '13px' },
    ...options,
  });
  const [, left, top, width, height] = /viewBox="([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+)"/.exec(plot.outerHTML)!;
  const { text: ground } = palettes.light;
  const style = `text{white-space:pre}@media(prefers-color-scheme:dark){svg{color:${palettes.dark.text}}${dark}}`;
  const inner = plot.innerHTML
    .replace(/<style>[\s\S]*?<\/style>/, '')
    // Two decimals of a pixel are more than an eye sees, and the same on every machine.
    .replaceAll(/-?\d+\.\d{3,}/g, (digits) => String(Number(Number(digits).toFixed(2))))
    .replaceAll(/<(g|path|text|line|rect|circle)/g, '\n<$1');
  // The title is seen too: a picture is often shown alone.
  const head = HEAD + (legend ? LEGEND : 0);
  const [x, y] = [Number(left), Number(top) - head];
  const high = Number(height) + head;
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${[x, y, width, high].join(' ')}" width="${width}" height="${high}" role="img" aria-labelledby="title description" color="${ground}" fill="currentColor" text-anchor="middle" font-family="system-ui, sans-serif" font-size="13">`,
    `<title id="title">${escaped(title)}</title>`,
    `<desc id="description">${escaped(description)}</desc>`,
    `<style>${style}</style>`,
    `<rect x="${x}" y="${y}" width="${width}" height="${high}" rx="6" fill="var(--paper)"/>`,
    `<text x="${x + 12}" y="${y + 24}" text-anchor="start" font-size="15" font-weight="600" fill="var(--text)">${escaped(title)}</text>`,
    legend
      ? `<text x="${x + 12}" y="${y + 24 + LEGEND}" text-anchor="start" font-size="12" fill="var(--faint)">${escaped(legend)}</text>`
      : '',
    inner,
    '</svg>',
    '',
  ].join('\n');
  return plainColours(svg);
}

/** Words on a picture, with a halo of paper that keeps them apart from what they stand on. */
export const words = { stroke: ink.paper, strokeWidth: 4 } as const;

/** A heading at the top left of each panel. */
export const heading = (data: Plot.Data, text: Plot.ChannelValue, options: Plot.TextOptions): Plot.Text =>
  Plot.text(data, {
    ...words,
    text,
    frameAnchor: 'top-left',
    dx: 6,
    dy: 4,
    fill: ink.text,
    fontWeight: 600,
    ...options,
  });

/** An axis with its name in the middle below it. */
export const below = (label: string, more: Plot.ScaleOptions): Plot.ScaleOptions => ({
  label,
  labelAnchor: 'center',
  labelArrow: 'none',
  ...more,
});

/** Panels with an axis below and one on the left, from `bottom` to `domain`, and lines across them at its ticks. */
export const panelled = (
  x: Plot.ScaleOptions,
  y: { readonly label: string; readonly domain: readonly [number, number]; readonly ticks: number[] },
) =>
  ({
    marginLeft: 52,
    marginTop: 28,
    marginBottom: 54,
    fx: { axis: null, padding: 0.06 },
    x,
    y: { ...y, labelArrow: 'none' },
  }) as const;
export const gridY = (at: number[]): Plot.RuleY => Plot.gridY(at, { stroke: ink.rule, strokeOpacity: 1 });

/** A curve with the band of its interval. */
export const curve = (
  points: readonly { readonly lower?: number }[],
  { fillOpacity = 0.22, ...options }: Plot.LineYOptions,
): Plot.RenderableMark[] => [
  Plot.areaY(
    points.filter(({ lower }) => lower !== undefined),
    { ...options, y1: 'lower', y2: 'upper', fill: ink.first, fillOpacity },
  ),
  Plot.lineY(points, { ...options, y: 'value', stroke: ink.first, strokeWidth: 2.5 }),
];

/** Numbers from one to another, both included. */
export const range = (from: number, to: number, step = 1): number[] =>
  Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, index) => from + index * step);

/** Places of panels, left to right and top to bottom. */
export const panels = <T>(items: readonly T[], columns: number): { item: T; column: number; row: number }[] =>
  items.map((item, index) => ({ item, column: index % columns, row: Math.floor(index / columns) }));
