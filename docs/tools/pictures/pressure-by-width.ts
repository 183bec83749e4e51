import * as Plot from '@observablehq/plot';
import groupMeans from '../../../src/checks/group-means.json' with { type: 'json' };
import { estimateOcclusionPressure, type Limb } from '../../../src/index.js';
import { below, curve, draw, gridY, heading, ink, panelled, range, words } from './frame.js';

const GIRTH = { leg: 55, arm: 32 } as const;
const PANEL = { leg: 'thigh of 55 cm', arm: 'arm of 32 cm' } as const;

const estimate = (limb: Limb, cuffWidthCm: number) => ({
  ...estimateOcclusionPressure({
    limb,
    circumferenceCm: GIRTH[limb],
    circumferenceSite: 'mid-limb',
    systolicMmHg: 120,
    diastolicMmHg: 70,
    cuffWidthCm,
    posture: 'supine',
  }),
  width: cuffWidthCm,
  panel: PANEL[limb],
});

/** Occlusion pressure against cuff width: the pooled curve with its band, and what was measured. */
export function pressureByWidth(): string {
  const estimated = (['leg', 'arm'] as const).flatMap((limb) =>
    range(limb === 'leg' ? 4 : 3, 20, 0.25).map((width) => estimate(limb, width)),
  );
  const means: readonly {
    limb: string;
    cuffWidthCm?: number;
    posture: string;
    grade: string;
    mean: number;
    standardDeviation?: number;
  }[] = groupMeans.rows;
  // Not every publication says how wide its cuff was.
  const measured = means.flatMap(({ limb, cuffWidthCm: width, posture, grade, mean, standardDeviation: sd = 0 }) =>
    width === undefined
      ? []
      : [
          {
            limb,
            width,
            mean,
            low: mean - sd,
            high: mean + sd,
            panel: PANEL[limb as Limb],
            // The curve is drawn for people lying down, and rests on no mean from memory.
            aside: posture === 'standing' ? ' standing' : grade === 'unconfirmed' ? ' from memory' : '',
          },
        ],
  );
  const highest = Math.max(...estimated.map(({ upper = 0 }) => upper));
  const top = 100 * Math.ceil(highest / 100);
  const key = {
    panel: PANEL.arm,
    lines: [
      '● measured: group mean, ± 1 SD',
      '○ the same, standing or from memory',
      '— pooled curve, 95 % prediction band',
    ],
  };
  const colours = [ink.second, ink.second, ink.first];
  return draw(
    {
      title: 'Occlusion pressure against cuff width, with published means',
      description: `Two panels, thigh and arm, for a person with 120/70 mmHg. The pooled curve falls with cuff width, with a wide band for one new person in a new laboratory. Measured group means: ${measured.map(({ limb, width, mean, aside }) => `${limb}, ${width} cm, ${mean} mmHg${aside}`).join('; ')}. With a 5 cm cuff on the arm the curve is above the means.`,
    },
    {
      height: 430,
      ...panelled(below('cuff width (cm)', { domain: [2, 20.5], ticks: [5, 10, 15, 20] }), {
        label: 'occlusion pressure (mmHg)',
        domain: [0, top],
        ticks: range(0, top - 100, 100),
      }),
      marginTop: 36,
      fx: { axis: null, padding: 0.06, domain: [PANEL.leg, PANEL.arm] },
      marks: [
        gridY(range(0, top - 100, 100)),
        curve(estimated, { fx: 'panel', x: 'width', fillOpacity: 0.18 }),
        Plot.ruleX(measured, { fx: 'panel', x: 'width', y1: 'low', y2: 'high', stroke: ink.second, strokeWidth: 2 }),
        Plot.dot(measured, {
          fx: 'panel',
          x: 'width',
          y: 'mean',
          r: 5,
          fill: ({ aside }: (typeof measured)[number]) => (aside ? ink.paper : ink.second),
          stroke: ({ aside }: (typeof measured)[number]) => (aside ? ink.second : ink.paper),
          strokeWidth: 1.5,
        }),
        heading(Object.values(PANEL), Plot.identity, { fx: (panel: string) => panel }),
        key.lines.map((line, index) =>
          Plot.text([key], {
            fx: 'panel',
            text: () => line,
            ...words,
            frameAnchor: 'top-right',
            textAnchor: 'end',
            dx: -6,
            dy: 28 + 19 * index,
            fill: colours[index]!,
            fontWeight: 600,
          }),
        ),
      ],
    },
  );
}
