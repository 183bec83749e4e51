import * as Plot from '@observablehq/plot';
import { estimateOcclusionPressure, measuredOcclusionPressure, targetCuffPressure } from '../../../src/index.js';
import { below, draw, heading, ink, range, words } from './frame.js';

const ASKED = [40, 50, 60, 80] as const;
const readings = { limb: 'leg', circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70, posture: 'supine' } as const;

/** The 95 % interval of the true percentage, by how the occlusion pressure was found. */
export function truePercent(): string {
  const ways = [
    {
      way: 'measured by Doppler',
      occlusion: measuredOcclusionPressure({ valueMmHg: 170, method: 'doppler', limb: 'leg' }),
    },
    {
      way: 'measured by oximeter',
      occlusion: measuredOcclusionPressure({ valueMmHg: 170, method: 'oximeter', limb: 'leg' }),
    },
    {
      way: 'estimated, 18 cm cuff',
      occlusion: estimateOcclusionPressure({ ...readings, cuffWidthCm: 18, ageYears: 25, sex: 'male' }),
    },
    { way: 'estimated, 10 cm cuff', occlusion: estimateOcclusionPressure({ ...readings, cuffWidthCm: 10 }) },
  ];
  const targets = ways.flatMap(({ way, occlusion }) =>
    ASKED.map((percentLop) => {
      const { lower, upper } = targetCuffPressure({ occlusion, percentLop, gaugeStepMmHg: 0.1 }).reached!;
      return { way, asked: `${percentLop} %`, percentLop, lower: lower!, upper: upper! };
    }),
  );
  return draw(
    {
      title: 'What a target really is, as a percentage of the true occlusion pressure',
      legend: 'Dot: the share you ask for. Bar: 95 % interval of the true share. Shaded: the artery is closed.',
      description: `For each way of coming by the occlusion pressure of a thigh and each target, the range that holds for 95 of 100 people. ${targets.map(({ way, asked, lower, upper }) => `${way}, ${asked}: ${Math.round(lower)} to ${Math.round(upper)} %`).join('; ')}. At 100 % the artery is closed.`,
    },
    {
      height: 470,
      marginLeft: 58,
      marginTop: 14,
      marginRight: 24,
      marginBottom: 54,
      fy: { axis: null, padding: 0.12, domain: ways.map(({ way }) => way) },
      x: below('percent of the true occlusion pressure', { domain: [20, 190], ticks: range(20, 180, 20) }),
      y: {
        label: null,
        domain: [' ', ...ASKED.map((percent) => `${percent} %`)],
        tickSize: 0,
        ticks: ASKED.map((percent) => `${percent} %`),
      },
      marks: [
        Plot.rect(ways, { fy: 'way', x1: 100, x2: 190, fill: ink.second, fillOpacity: 0.13 }),
        Plot.gridX({ stroke: ink.rule, strokeOpacity: 1 }),
        Plot.ruleX([100], { stroke: ink.second, strokeWidth: 1.5 }),
        Plot.ruleY(targets, {
          fy: 'way',
          y: 'asked',
          x1: 'lower',
          x2: 'upper',
          stroke: ink.first,
          strokeWidth: 7,
          strokeLinecap: 'round',
          strokeOpacity: 0.45,
        }),
        Plot.dot(targets, { fy: 'way', y: 'asked', x: 'percentLop', r: 4.5, fill: ink.first }),
        (['lower', 'upper'] as const).map((end) =>
          Plot.text(targets, {
            ...words,
            fy: 'way',
            y: 'asked',
            x: end,
            dx: end === 'lower' ? -9 : 9,
            text: (target: (typeof targets)[number]) => String(Math.round(target[end])),
            textAnchor: end === 'lower' ? 'end' : 'start',
            fill: ink.faint,
          }),
        ),
        heading(ways, 'way', { fy: 'way' }),
        Plot.text(ways.slice(0, 1), {
          fy: 'way',
          text: () => 'artery closed',
          frameAnchor: 'top-right',
          dx: -6,
          dy: 4,
          fill: ink.second,
          fontWeight: 600,
        }),
      ],
    },
  );
}
