import { frozen } from '../quantity/frozen.js';
import type { Unit } from '../quantity/quantities.js';
import type { Grade } from './grades.js';
import type { SourceId } from './sources.js';

/** A figure at which a guard brings a caution, and how severe that is. */
export interface GuardStep {
  /** The step applies above this figure [`unit` of the guard]. */
  readonly above?: number;
  /** The step applies from this figure on [`unit` of the guard]. */
  readonly from?: number;
  /** How serious the step is. */
  readonly severity: 'note' | 'caution' | 'stop';
  /** Code of the sentence, in `messages`. */
  readonly code: string;
  /** How well the figure is backed. */
  readonly evidence: Grade;
  /** Id of the publication that backs the figure. */
  readonly source?: SourceId;
}

/** An absolute limit on a pressure, a dose or a frequency. */
export interface Guard {
  /** What the guard is about, in words. */
  readonly name: string;
  /** Unit of the figures in `steps`. */
  readonly unit: Unit;
  /** Its steps, mildest first: each later one lies higher and is more severe. */
  readonly steps: readonly GuardStep[];
}

const PRACTICE = 'practice' as const;

/** The limits of pressures and their percentages: apart, so that an app that only sets a cuff ships no others. */
export const pressureGuards = frozen({
  'cuff-pressure': {
    name: 'cuff pressure',
    unit: 'mm[Hg]',
    steps: [
      // Above the 230 mmHg of walking trials with narrow belts, rounded up.
      { above: 250, severity: 'caution', code: 'cuff-pressure-high', evidence: PRACTICE },
      // Highest cuff pressure found in a training trial.
      {
        above: 300,
        severity: 'stop',
        code: 'cuff-pressure-stop',
        evidence: 'published',
        source: 'complete-restriction-2007',
      },
    ],
  },
  'occlusion-pressure': {
    name: 'measured occlusion pressure',
    unit: 'mm[Hg]',
    steps: [
      // Several laboratories stop inflating at 300 mmHg; above it lie narrow cuffs on large thighs.
      { above: 300, severity: 'caution', code: 'occlusion-pressure-high', evidence: PRACTICE },
      // Highest occlusion pressure of one person that was found: a narrow emergency strap on a seated thigh.
      {
        above: 536,
        severity: 'stop',
        code: 'occlusion-pressure-stop',
        evidence: 'published',
        source: 'emergency-straps-2020',
      },
    ],
  },
  'percent-of-occlusion': {
    name: 'share of occlusion pressure in exercise',
    unit: '%',
    steps: [
      // The artery is closed from here on; the 2019 guideline review gives 40 to 80 % in exercise.
      { from: 100, severity: 'stop', code: 'percent-closes-artery', evidence: PRACTICE },
    ],
  },
  'closure-chance': {
    name: 'chance that the cuff closes the artery fully',
    unit: '%',
    steps: [
      // One person in twenty; a smaller chance is shown as a number without a caution.
      { from: 5, severity: 'caution', code: 'may-occlude', evidence: PRACTICE },
      // Closed as likely as not.
      { from: 50, severity: 'stop', code: 'likely-occludes', evidence: PRACTICE },
    ],
  },
} as const satisfies Record<string, Guard>);

/**
 * The absolute limits of the library: the caution when a pressure, a dose or a frequency passes a figure, graver the
 * further it goes. Figures of trials show what was tried in small groups, not what is safe.
 * Comments give the reason for each figure, and so does the guide on safety.
 *
 * @example
 * ```ts
 * import { guards } from 'cuffwork';
 * guards['cuff-pressure'].steps.map(({ above, severity }) => `${severity} ${above}`); // => ['caution 250', 'stop 300']
 * ```
 */
export const guards = frozen({
  ...pressureGuards,
  'days-since-measured': {
    name: 'days since the occlusion pressure was measured',
    unit: '1',
    steps: [
      // Every few weeks; no publication gives an interval.
      { from: 28, severity: 'caution', code: 'measured-long-ago', evidence: PRACTICE },
    ],
  },
  'unbroken-restriction': {
    name: 'longest unbroken restriction',
    unit: 'min',
    steps: [
      // Half as long again as the longest found in a training trial, 20 min; in surgery, closed fully, 2 h at most.
      {
        above: 30,
        severity: 'stop',
        code: 'restriction-unbroken-stop',
        evidence: PRACTICE,
        source: 'unbroken-cycling-2021',
      },
    ],
  },
  'limb-restriction-session': {
    name: 'restriction time of one limb in a session',
    unit: 'min',
    steps: [
      // Usual limit; no publication was found.
      { above: 20, severity: 'caution', code: 'restriction-long-limb', evidence: PRACTICE },
      // Twice the usual limit.
      { above: 40, severity: 'stop', code: 'restriction-limb-stop', evidence: PRACTICE },
    ],
  },
  'limb-restriction-day': {
    name: 'restriction time of one limb in a day',
    unit: 'min',
    steps: [
      // Two sessions at the usual limit of 20 min.
      { above: 40, severity: 'caution', code: 'restriction-long-day', evidence: PRACTICE },
      // Above the longest day found in a trial: 5 × 5 min at rest, twice a day, 50 min.
      { above: 60, severity: 'stop', code: 'restriction-day-stop', evidence: PRACTICE, source: 'passive-2008' },
    ],
  },
  'limb-restriction-week': {
    name: 'restriction time of one limb in a week',
    unit: 'min',
    steps: [
      // Five sessions at the usual limit of 20 min.
      { above: 100, severity: 'caution', code: 'restriction-long-week', evidence: PRACTICE },
      // The longest week found in a trial: 50 min on each of seven days.
      { above: 350, severity: 'stop', code: 'restriction-week-stop', evidence: PRACTICE, source: 'passive-2008' },
    ],
  },
  'restricted-sessions-day': {
    name: 'sessions with restriction in a day',
    unit: '{sessions}',
    steps: [
      // At most twice a day, for one to three weeks.
      {
        above: 2,
        severity: 'caution',
        code: 'sessions-many-day',
        evidence: 'unconfirmed',
        source: 'guideline-review-2019',
      },
    ],
  },
  'restricted-sessions-week': {
    name: 'sessions with restriction in a week',
    unit: '{sessions}',
    steps: [
      // Two to three a week in blocks of more than three weeks.
      {
        above: 3,
        severity: 'note',
        code: 'sessions-above-usual',
        evidence: 'secondary',
        source: 'guideline-review-2019',
      },
      // Practitioners report one to four a week.
      {
        above: 4,
        severity: 'caution',
        code: 'sessions-many-week',
        evidence: 'published',
        source: 'practitioner-survey-2018',
      },
      // Most found in a trial: twice a day for two weeks.
      { above: 14, severity: 'stop', code: 'sessions-week-stop', evidence: 'published', source: 'passive-2008' },
    ],
  },
} as const satisfies Record<string, Guard>);

/** The id of a limit in {@link guards}. */
export type GuardId = keyof typeof guards;

/** The code of what a step of {@link guards} says. */
export type GuardCode = (typeof guards)[GuardId]['steps'][number]['code'];

/** The most severe step of a guard that a figure passes; with `most` a caution, stops are passed over. */
export function stepOf({ steps }: Guard, value: number, most: 'caution' | 'stop' = 'stop'): GuardStep | undefined {
  let passed: GuardStep | undefined;
  for (const step of steps) {
    const { above, from, severity } = step;
    if (severity === 'stop' && most !== 'stop') continue;
    if (above === undefined ? value >= from! : value > above) passed = step;
  }
  return passed;
}

/** The same of the guard of an id. */
export const passedStep = (id: GuardId, value: number, most?: 'caution' | 'stop'): GuardStep | undefined =>
  stepOf(guards[id], value, most);
