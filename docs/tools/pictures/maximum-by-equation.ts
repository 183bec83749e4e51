import * as Plot from '@observablehq/plot';
import { attempt, estimateOneRepMax, type OneRepMaxEquationId } from '../../../src/index.js';
import { maximumViews } from '../equation-views.js';
import { below, curve, draw, gridY, heading, ink, panelled, panels, range } from './frame.js';

/** The maximum by every equation that works for any load, each in front of the others. */
export function maximumByEquation(): string {
  const LOAD = 100;
  const BOTTOM = 80;
  const TOP = 220;
  const ticks = range(BOTTOM, TOP, 20);
  const curves = maximumViews
    // Those for any lift whose coefficients we read; the decimal form of one is the same curve.
    .filter(({ lifts, evidence, id }) => lifts === 'any' && evidence !== 'unconfirmed' && !id.endsWith('-decimal'))
    .map(({ id, name, evidence }) => ({
      name,
      evidence,
      points: range(2, 20).flatMap((repetitions) => {
        const answer = attempt(estimateOneRepMax, { load: LOAD, repetitions, equation: id as OneRepMaxEquationId });
        return answer.ok && answer.value.value <= TOP ? [{ repetitions, ...answer.value }] : [];
      }),
    }))
    .filter(({ points }) => points.length > 1);
  const columns = Math.min(4, curves.length);
  const placed = panels(curves, columns);
  const facet = { fx: 'column', fy: 'row' } as const;
  const own = placed.flatMap(({ item, column, row }) => item.points.map((point) => ({ ...point, column, row })));
  const others = placed.flatMap(({ item, column, row }) =>
    curves
      .filter((curve) => curve !== item)
      .flatMap((curve) => curve.points.map((point) => ({ ...point, name: curve.name, column, row }))),
  );
  const labels = placed.map(({ item: { name, evidence, points }, column, row }) => {
    const last = points.filter(({ lower }) => lower !== undefined).at(-1)?.repetitions ?? 1;
    return { name, evidence, last, column, row };
  });
  const rows = Math.ceil(curves.length / columns);
  return draw(
    {
      title: 'One-repetition maximum from 100 kg, by the equations for any lift',
      legend: 'Line in colour: this equation. Grey lines: the others. Band: 95 % interval. Shaded: no error known.',
      description: `One panel for each equation, its line in colour in front of the others in grey. The band is the 95 % interval; where there is none, no error is known. Above 10 repetitions to failure the equations spread apart. ${curves
        .map(
          ({ name, evidence, points }) =>
            `${name}, grade ${evidence}: ${points
              .filter(({ repetitions }) => repetitions % 10 === 0)
              .map(({ repetitions, value }) => `${Math.round(value)} kg at ${repetitions} repetitions`)
              .join(', ')}`,
        )
        .join('; ')}.`,
    },
    {
      height: rows === 1 ? 380 : 60 + 235 * rows,
      ...panelled(below('repetitions to failure with 100 kg', { domain: [1, 20.5], ticks: [5, 10, 15, 20] }), {
        label: 'one-repetition maximum (kg)',
        domain: [BOTTOM, TOP + 54],
        ticks,
      }),
      fy: { axis: null, padding: 0.08 },
      marks: [
        Plot.rect(labels, { ...facet, x1: 'last', x2: 20.5, y1: BOTTOM, y2: TOP, fill: ink.faint, fillOpacity: 0.1 }),
        gridY(ticks),
        Plot.lineY(others, {
          ...facet,
          x: 'repetitions',
          y: 'value',
          z: 'name',
          stroke: ink.faint,
          strokeWidth: 1.2,
          strokeOpacity: 0.6,
        }),
        curve(own, { ...facet, x: 'repetitions' }),
        heading(labels, ({ name, evidence }: (typeof labels)[number]) => `${name}\n(${evidence})`, {
          ...facet,
          lineWidth: 12,
          dy: 2,
        }),
        Plot.text(labels.slice(0, 1), {
          ...facet,
          x: 15.2,
          y: BOTTOM + 4,
          text: () => 'no error known',
          fill: ink.faint,
        }),
      ],
    },
  );
}
