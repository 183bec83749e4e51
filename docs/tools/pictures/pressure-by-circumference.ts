import * as Plot from '@observablehq/plot';
import { attempt, estimateOcclusionPressure, type OcclusionInput } from '../../../src/index.js';
import { drawnWidth, occlusionViews } from '../equation-views.js';
import { below, curve, draw, gridY, heading, ink, panelled, panels, range, words } from './frame.js';

const CIRCUMFERENCES = { arm: range(24, 44), leg: range(42, 72) } as const;

/** Occlusion pressure against circumference, by every equation, with its 95 % band. */
export function pressureByGirth(): string {
  const drawn = occlusionViews
    .map((view) => {
      const limb = view.limb === 'any' ? 'leg' : view.limb;
      const points = CIRCUMFERENCES[limb].flatMap((circumferenceCm) => {
        const answer = attempt(estimateOcclusionPressure, {
          limb,
          circumferenceCm,
          systolicMmHg: 120,
          diastolicMmHg: 70,
          cuffWidthCm: drawnWidth(view.cuffWidthCm),
          posture: 'supine',
          ageYears: 25,
          sex: 'male',
          equation: view.id as NonNullable<OcclusionInput['equation']>,
        });
        return answer.ok ? [{ circumferenceCm, ...answer.value }] : [];
      });
      return { ...view, points };
    })
    // An equation that asks for more than these readings cannot be drawn.
    .filter(({ points }) => points.length > 0);
  const columns = drawn.length > 4 ? 3 : 4;
  const top = 100 * Math.ceil(Math.max(...drawn.flatMap(({ points }) => points.map(({ upper = 0 }) => upper))) / 100);
  const placed = panels(drawn, columns);
  const points = placed.flatMap(({ item, column, row }) => item.points.map((point) => ({ ...point, column, row })));
  const labels = placed.map(({ item: { id, limb, cuffWidthCm, evidence }, column, row }) => ({
    column,
    row,
    name: id,
    what: `${limb === 'arm' ? 'arm' : 'thigh'}, ${drawnWidth(cuffWidthCm)} cm cuff`,
    evidence,
  }));
  const facet = { fx: 'column', fy: 'row' } as const;
  const faint = { frameAnchor: 'top-left', dx: 6, fill: ink.faint } as const;
  return draw(
    {
      title: 'Occlusion pressure against limb circumference, by equation',
      description: `One panel for each equation, for a man of 25 years with 120/70 mmHg, supine. A line gives the estimate, the band its 95 % interval. ${labels.map(({ name, what, evidence }) => `${name}: ${what}, grade ${evidence}`).join('; ')}. The narrower the cuff, the steeper the line.`,
    },
    {
      height: 40 + 300 * Math.ceil(placed.length / columns),
      ...panelled(below('limb circumference (cm)', { domain: [20, 76], ticks: [30, 50, 70] }), {
        label: 'occlusion pressure (mmHg)',
        domain: [0, top + 100],
        ticks: range(0, top, 100),
      }),
      fy: { axis: null, padding: 0.1 },
      marks: [
        gridY(range(0, top, 100)),
        curve(points, { ...facet, x: 'circumferenceCm' }),
        heading(labels, 'name', facet),
        Plot.text(labels, { ...facet, ...words, ...faint, text: 'what', dy: 21 }),
        Plot.text(labels, { ...facet, ...words, ...faint, text: 'evidence', dy: 38, fontStyle: 'italic' }),
      ],
    },
  );
}
