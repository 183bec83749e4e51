import * as Plot from '@observablehq/plot';
import { sessionTotals, sessionTimeline, type Prescription, type Restriction } from '../../../src/index.js';
import { clock } from '../../../src/quantity/format.js';
import { below, draw, ink, range, words } from './frame.js';

const prescription = (restriction: Restriction): Prescription => ({
  scheme: '30-15-15-15',
  tempo: { eccentricS: 2, concentricS: 2 },
  restS: 30,
  restriction,
});

/** The clock of one session, with the cuff inflated throughout and deflated in the rests. */
export function sessionPicture(): string {
  const rows = (['continuous', 'intermittent'] as const).map((restriction) => {
    const { events } = sessionTimeline(prescription(restriction));
    const ups = events.filter(({ event }) => event === 'inflate');
    const downs = events.filter(({ event }) => event === 'deflate');
    const { restrictionTime, longestRestriction } = sessionTotals(prescription(restriction));
    return {
      row: `${restriction}: restriction ${clock(restrictionTime.value)}, longest unbroken ${clock(longestRestriction.value)}`,
      sets: events
        .filter(({ event }) => event === 'set')
        .map(({ atS, durationS = 0, repetitions }) => ({ from: atS, to: atS + durationS, repetitions })),
      cuff: ups.map(({ atS }, index) => ({ from: atS, to: downs[index]!.atS })),
    };
  });
  const sets = rows.flatMap(({ row, sets: all }) => all.map((set) => ({ row, ...set })));
  const cuff = rows.flatMap(({ row, cuff: all }) => all.map((up) => ({ row, ...up })));
  const names = rows.flatMap(({ row }) => [
    { row, y: 0.72, text: 'sets' },
    { row, y: 0.2, text: 'inflated' },
  ]);
  const minutes = range(0, 360, 60);
  return draw(
    {
      title: 'The clock of 30-15-15-15 with continuous and with intermittent restriction',
      legend: 'Upper bars: sets. Lower bars: the cuff is inflated.',
      description: `Four sets of 30, 15, 15 and 15 repetitions of 4 seconds with three rests of 30 seconds take 6 minutes 30. ${rows.map(({ row }) => row).join('; ')}.`,
    },
    {
      height: 270,
      marginLeft: 64,
      marginRight: 24,
      marginTop: 12,
      marginBottom: 54,
      fy: { axis: null, padding: 0.16, domain: rows.map(({ row }) => row) },
      x: below('minutes from the start', { domain: [0, 390], ticks: minutes, tickFormat: (at: number) => clock(at) }),
      y: { axis: null, domain: [0, 1.3] },
      marks: [
        Plot.gridX({ stroke: ink.rule, strokeOpacity: 1, ticks: minutes }),
        Plot.rect(cuff, { fy: 'row', x1: 'from', x2: 'to', y1: 0.08, y2: 0.32, fill: ink.second, rx: 3 }),
        Plot.rect(sets, { fy: 'row', x1: 'from', x2: 'to', y1: 0.46, y2: 0.98, fill: ink.first, rx: 3 }),
        Plot.text(sets, {
          fy: 'row',
          x: (d: { from: number; to: number }) => (d.from + d.to) / 2,
          y: 0.72,
          text: (d: { repetitions: number }) => `${d.repetitions} reps`,
          fill: ink.paper,
          fontWeight: 600,
        }),
        Plot.text(names, { fy: 'row', x: 0, y: 'y', dx: -8, text: 'text', textAnchor: 'end', fill: ink.text }),
        Plot.text(rows, {
          ...words,
          fy: 'row',
          x: 0,
          y: 1.16,
          text: 'row',
          textAnchor: 'start',
          fill: ink.text,
          fontWeight: 600,
        }),
      ],
    },
  );
}
