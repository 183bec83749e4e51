import type { SessionTimeline } from 'cuffwork';

const SVG = 'http://www.w3.org/2000/svg';
/** What is left free at either end for the numbers of the scale. */
const EDGE = 14;

type Attributes = Readonly<Record<string, string | number>>;

function draw(name: string, attributes: Attributes, ...children: (SVGElement | string)[]): SVGElement {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  element.append(...children);
  return element;
}

/** A picture with words in its place for those who do not see it. */
const picture = (width: number, height: number, words: string, parts: SVGElement[]): SVGElement =>
  draw('svg', { viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': words }, ...parts);

export const clock = (seconds: number): string => {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
};

/** A step of 1, 2 or 5 times a power of ten that cuts a span into few enough parts for the width. */
function niceStep(span: number, width: number): number {
  const rough = span / Math.min(6, Math.floor(width / 70));
  const power = 10 ** Math.floor(Math.log10(rough));
  return ([1, 2, 5, 10].find((factor) => factor * power >= rough) ?? 10) * power;
}

function scale(max: number, y: number, x: (value: number) => number, words: (value: number) => string, step: number) {
  const marks = Array.from({ length: Math.floor(max / step + 1e-9) + 1 }, (_, index) => index * step);
  const last = marks.at(-1)!;
  return marks.flatMap((value) => {
    const line = draw('line', { class: 'grid', x1: x(value), x2: x(value), y1: 6, y2: y });
    const anchor = x(max) - x(value) < EDGE ? 'end' : 'middle';
    const label = draw('text', { class: 'scale', x: x(value), y: y + 18, 'text-anchor': anchor }, words(value));
    // The last number has its unit beside it, which needs the room of the one before.
    const crowded = value !== last && x(last) - x(value) < 100 && words(last).includes(' ');
    return crowded ? [line] : [line, label];
  });
}

/** A value with the range it may lie in, on a scale; without a range, such as a pressure that you set, it is a mark. */
export interface Band {
  readonly name: string;
  readonly look: 'pressure' | 'setting' | 'load';
  readonly value: number;
  readonly lower?: number | undefined;
  readonly upper?: number | undefined;
}

/** Bands above one scale, with lines across for what they are to be held against. */
export function bandChart(
  width: number,
  words: string,
  unit: string,
  bands: readonly Band[],
  across: readonly { readonly at: number; readonly name: string }[] = [],
): SVGElement {
  const ends = [...bands.flatMap(({ value, upper }) => [value, upper ?? 0]), ...across.map(({ at }) => at)];
  const step = niceStep(Math.max(...ends) * 1.05, width);
  const max = Math.ceil((Math.max(...ends) * 1.05) / step) * step;
  const x = (value: number): number => EDGE + (Math.max(0, value) / max) * (width - 2 * EDGE);
  const top = across.length > 0 ? 26 : 8;
  const bottom = top + bands.length * 46;
  const rows = bands.flatMap(({ name, look, value, lower, upper }, index) => {
    const y = top + index * 46;
    const from = x(lower ?? value);
    const to = x(upper ?? (lower === undefined ? value : max));
    return [
      draw('text', { class: 'name', x: EDGE, y: y + 13 }, name),
      draw('rect', { class: `band ${look}`, x: from, y: y + 20, width: to - from, height: 16, rx: 3 }),
      draw('rect', { class: `mark ${look}`, x: x(value) - 2, y: y + 17, width: 4, height: 22, rx: 2 }),
    ];
  });
  const lines = across.flatMap(({ at, name }, index) => [
    draw('line', { class: 'across', x1: x(at), x2: x(at), y1: 18, y2: bottom }),
    draw('text', { class: 'across', x: x(at), y: 13, 'text-anchor': index % 2 === 0 ? 'end' : 'start' }, name),
  ]);
  const label = (value: number): string => `${Number(value.toPrecision(6))}${value + step > max ? ` ${unit}` : ''}`;
  return picture(width, bottom + 24, words, [...scale(max, bottom, x, label, step), ...lines, ...rows]);
}

/** A point of the curve: cuff width [cm], pressure and the ends of its interval [mmHg]. */
export interface CurvePoint {
  readonly width: number;
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
}

/** Pressure against cuff width: the curve with its band, published means, and the cuff that is worn. */
export function curveChart(
  width: number,
  words: string,
  curve: readonly CurvePoint[],
  means: readonly { readonly width: number; readonly mean: number }[],
  cuff: number,
): SVGElement {
  const [first, last] = [curve[0]!, curve.at(-1)!];
  const highest = Math.max(...curve.map(({ upper }) => upper), ...means.map(({ mean }) => mean));
  const [left, top, bottom] = [EDGE + 34, 10, 210];
  const x = (at: number): number => left + ((at - first.width) / (last.width - first.width)) * (width - left - EDGE);
  const y = (value: number): number => bottom - (value / highest) * (bottom - top);
  const path = (points: readonly (readonly [number, number])[]): string =>
    points.map(([at, value], index) => `${index === 0 ? 'M' : 'L'}${x(at).toFixed(1)} ${y(value).toFixed(1)}`).join('');
  const upper = curve.map((point) => [point.width, point.upper] as const);
  const lower = curve.map((point) => [point.width, point.lower] as const).reverse();
  const line = curve.map((point) => [point.width, point.value] as const);
  const step = niceStep(highest, 280);
  const heights = Array.from({ length: Math.floor(highest / step) + 1 }, (_, index) => index * step);
  const widths = [5, 10, 15, 20].filter((at) => at >= first.width && at <= last.width);
  return picture(width, bottom + 24, words, [
    ...heights.flatMap((value) => [
      draw('line', { class: 'grid', x1: left, x2: width - EDGE, y1: y(value), y2: y(value) }),
      draw('text', { class: 'scale', x: left - 6, y: y(value) + 4, 'text-anchor': 'end' }, String(value)),
    ]),
    ...widths.map((at) => {
      const label = at === widths.at(-1) ? `${at} cm` : String(at);
      return draw('text', { class: 'scale', x: x(at), y: bottom + 18, 'text-anchor': 'middle' }, label);
    }),
    draw('path', { class: 'band pressure', d: `${path([...upper, ...lower])}Z` }),
    draw('path', { class: 'line pressure', d: path(line) }),
    ...(cuff >= first.width && cuff <= last.width
      ? [draw('line', { class: 'across', x1: x(cuff), x2: x(cuff), y1: top, y2: bottom })]
      : []),
    ...means.map(({ width: at, mean }) => draw('circle', { class: 'mean', cx: x(at), cy: y(mean), r: 4 })),
  ]);
}

/** The session in time: sets above, the cuff below. */
export function timelineChart(width: number, words: string, { events, durationS }: SessionTimeline): SVGElement {
  const x = (seconds: number): number => EDGE + (seconds / durationS) * (width - 2 * EDGE);
  const sets = events.flatMap(({ event, atS, durationS: lasts = 0, repetitions }) => {
    if (event !== 'set') return [];
    const [from, to] = [x(atS), x(atS + lasts)];
    const label = draw(
      'text',
      { class: 'inside', x: (from + to) / 2, y: 47, 'text-anchor': 'middle' },
      String(repetitions),
    );
    return [
      draw('rect', { class: 'set', x: from, y: 24, width: to - from, height: 36, rx: 3 }),
      // A block too narrow for its number goes without; the table has it.
      ...(to - from > 18 ? [label] : []),
    ];
  });
  const ups = events.filter(({ event }) => event === 'inflate');
  const downs = events.filter(({ event }) => event === 'deflate');
  const cuff = ups.map(({ atS }, index) => {
    const end = downs[index]?.atS ?? durationS;
    return draw('rect', { class: 'cuff', x: x(atS), y: 86, width: x(end) - x(atS), height: 16, rx: 3 });
  });
  const steps = [10, 15, 30, 60, 120, 300, 600, 1200, 1800, 3600];
  const step = steps.find((seconds) => durationS / seconds <= width / 65) ?? durationS / 4;
  return picture(width, 132, words, [
    ...scale(durationS, 108, x, clock, step),
    draw('text', { class: 'name', x: EDGE, y: 17 }, 'repetitions'),
    ...sets,
    draw('text', { class: 'name', x: EDGE, y: 79 }, cuff.length > 0 ? 'cuff inflated' : 'no cuff'),
    ...cuff,
  ]);
}

/** One side of the strip: what it is in words, how much of its scale, and the same of a session that was kept. */
export interface Side {
  readonly words: string;
  readonly share: number;
  readonly kept?: number | undefined;
}

/**
 * Load against minutes under the cuff: from one line in the middle the load grows to the left, the minutes to the right,
 * each on a scale of its own. An outline is the session that was kept to compare with.
 */
export function tradeStrip(width: number, words: string, load: Side, minutes: Side): SVGElement {
  const [middle, top, height] = [width / 2, 20, 14];
  const room = middle - EDGE;
  const along = (share: number): number => Math.min(1, share) * room;
  const bar = (look: string, share: number, left: boolean, y: number, high: number): SVGElement =>
    draw('rect', { class: look, x: left ? middle - along(share) : middle, y, width: along(share), height: high });
  const side = (look: string, { words: said, share, kept }: Side, left: boolean): SVGElement[] => [
    bar(look, share, left, top, height),
    ...(kept === undefined ? [] : [bar(`kept ${look}`, kept, left, top - 3, height + 6)]),
    draw(
      'text',
      { class: 'beside', x: left ? middle - 8 : middle + 8, y: 13, 'text-anchor': left ? 'end' : 'start' },
      said,
    ),
  ];
  return picture(width, top + height + 6, words, [
    draw('line', { class: 'grid', x1: EDGE, x2: width - EDGE, y1: top + height + 3, y2: top + height + 3 }),
    ...side('load', load, true),
    ...side('setting', minutes, false),
    draw('line', { class: 'middle', x1: middle, x2: middle, y1: 2, y2: top + height + 6 }),
  ]);
}

/** A week of the chart: its share of 1RM [%], its minutes under the cuff, and the percentage of LOP in them. */
export interface WeekColumn {
  readonly week: number;
  readonly deload: boolean;
  readonly percentOneRepMax: number | undefined;
  readonly minutes: number;
  readonly percentLop: number | undefined;
}

/** Weeks from left to right: above the line the load, below it the minutes under the cuff. */
export function weeksChart(width: number, words: string, weeks: readonly WeekColumn[]): SVGElement {
  const [up, line, down] = [26, 126, 196];
  const each = (width - 2 * EDGE) / weeks.length;
  const wide = Math.min(44, each * 0.66);
  const most = Math.max(1, ...weeks.map(({ minutes }) => minutes));
  const columns = weeks.flatMap(({ week, deload, percentOneRepMax, minutes, percentLop }, index) => {
    const middle = EDGE + (index + 0.5) * each;
    const text = (y: number, said: string, look = 'scale'): SVGElement =>
      draw('text', { class: look, x: middle, y, 'text-anchor': 'middle' }, said);
    const high = ((percentOneRepMax ?? 0) / 100) * (line - up);
    const low = (minutes / most) * (down - line);
    const look = deload ? ' deload' : '';
    return [
      ...(percentOneRepMax === undefined
        ? []
        : [
            draw('rect', { class: `load${look}`, x: middle - wide / 2, y: line - high, width: wide, height: high }),
            text(
              line - high - 5,
              each < 34 ? String(Math.round(percentOneRepMax)) : `${Math.round(percentOneRepMax)} %`,
            ),
          ]),
      ...(minutes === 0
        ? []
        : [
            draw('rect', { class: `setting${look}`, x: middle - wide / 2, y: line, width: wide, height: low }),
            text(line + low + 15, each < 34 ? String(Math.round(minutes)) : clock(minutes * 60)),
            ...(percentLop === undefined || each < 34 ? [] : [text(line + low + 30, `${Math.round(percentLop)} %`)]),
          ]),
      text(down + 52, String(week), 'name'),
    ];
  });
  return picture(width, down + 58, words, [
    draw('text', { class: 'name', x: EDGE, y: 13 }, 'heaviest load, % of 1RM'),
    ...columns,
    draw('line', { class: 'middle', x1: EDGE, x2: width - EDGE, y1: line, y2: line }),
  ]);
}
