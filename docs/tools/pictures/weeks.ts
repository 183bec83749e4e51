import * as Plot from '@observablehq/plot';
import { compareWeeks } from '../../../src/plan/index.js';
import { KNEE_FROM, kneeWeeks } from '../stories/knee.js';
import { below, draw, heading, ink, words } from './frame.js';

/** Weeks 2 to 12 of the knee of the docs’ story: load rises, minutes under the cuff fall. */
export function weeksPicture(): string {
  const rows = compareWeeks({ weeks: kneeWeeks, firstWeek: KNEE_FROM }).weeks.flatMap(({ week, deload, planned }) => {
    const [limb] = planned!.limbs;
    const percent = limb!.peakPercentOneRepMax?.value ?? 0;
    const minutes = limb!.restrictionTime.value / 60;
    const name = `${week}${deload ? ', deload' : ''}`;
    return [
      { week, name, panel: 'heaviest load, % of 1RM', value: percent },
      { week, name, panel: 'minutes under the cuff in the week', value: minutes },
    ];
  });
  const panelNames = ['heaviest load, % of 1RM', 'minutes under the cuff in the week'];
  const label = (value: number): string => (value === 0 ? 'none' : value.toFixed(value < 100 && value % 1 > 0 ? 1 : 0));
  const bars = (panel: string) => rows.filter((row) => row.panel === panel);
  return draw(
    {
      title: 'A knee from week 2 to week 12: load rises, the cuff falls',
      description: panelNames
        .map(
          (panel) =>
            `${panel}: ${bars(panel)
              .map(({ name, value }) => `week ${name} ${label(value)}`)
              .join('; ')}.`,
        )
        .join(' '),
    },
    {
      height: 380,
      marginLeft: 24,
      marginRight: 24,
      marginTop: 30,
      marginBottom: 46,
      fy: { axis: null, padding: 0.22, domain: panelNames },
      x: below('week after surgery; week 8 is a deload', { padding: 0.2 }),
      y: { axis: null, domain: [0, 1.12] },
      marks: panelNames.flatMap((panel, index) => {
        const own = bars(panel);
        const most = Math.max(...own.map(({ value }) => value));
        const shown = own.map((row) => ({ ...row, height: row.value / most }));
        return [
          Plot.barY(shown, {
            fy: 'panel',
            x: 'week',
            y: 'height',
            fill: index === 0 ? ink.first : ink.second,
            rx: 3,
          }),
          Plot.text(shown, {
            ...words,
            fy: 'panel',
            x: 'week',
            y: 'height',
            dy: -8,
            text: ({ value }: { value: number }) => label(value),
            fill: ink.text,
          }),
          heading([{ panel }], 'panel', { fy: 'panel', dx: 0, dy: -24 }),
        ];
      }),
    },
  );
}
