import { guards, pressureGuards, stepOf, type Guard, type GuardCode, type GuardId } from '../evidence/guards.js';
import { format } from '../quantity/format.js';
import type { Caution } from './answer.js';
import { cautionsOf } from './sentences.js';
import type { Catalogue, MessageValues } from './messages.js';
import type { Path } from './issues.js';

/** What the limits of pressures say, by the code of the step that was passed. */
const pressureGuardMessages = {
  'cuff-pressure-high':
    'A cuff pressure of {value} mmHg is above {limit} mmHg. Check the occlusion pressure, the cuff width and the fit. A wider cuff needs less pressure.',
  'cuff-pressure-stop':
    'Do not inflate to {value} mmHg. That is above {limit} mmHg, the highest cuff pressure we found in a training trial. Use a wider cuff and measure again.',
  'occlusion-pressure-high':
    'A measured occlusion pressure of {value} mmHg is above {limit} mmHg. Check the cuff, its fit and the reading, and measure again.',
  'occlusion-pressure-stop':
    'Do not use the measured occlusion pressure of {value} mmHg. We found none above {limit} mmHg in one person, with any cuff. Measure again.',
  'percent-closes-artery':
    'Do not exercise at {value} % of occlusion pressure: from {limit} % on, the artery is closed. Lower the percentage.',
  'may-occlude':
    'The chance that this setting closes the artery fully is {value:%}. Lower the percentage, or measure the occlusion pressure.',
  'likely-occludes':
    'Do not use this setting: the chance that it closes the artery fully is {value:%}. Lower the percentage, or measure the occlusion pressure.',
} as const satisfies Catalogue;

/** What the absolute limits say, by the code of the step that was passed. */
export const guardMessages = {
  ...pressureGuardMessages,
  'measured-long-ago':
    'The occlusion pressure of the {side} {limb} was measured {value} days ago. Measure again at least every {limit} days.',
  'restriction-unbroken-stop':
    'Deflate earlier. {value:min} of unbroken restriction is above {limit} min; the longest we found in a training trial is 20 min.',
  'restriction-long-limb': '{value:min} of restriction on one limb is above the usual limit of {limit} min a session.',
  'restriction-limb-stop':
    'Do not restrict one limb for {value:min} in a session. That is above {limit} min, twice the usual limit. Plan less.',
  'restriction-long-day':
    '{value:min} of restriction in one day on the {side} {limb} is above {limit} min, two sessions at the usual limit. Plan less.',
  'restriction-day-stop':
    'Do not restrict the {side} {limb} for {value:min} in one day. That is above {limit} min; the longest day we found in a trial is 50 min. Plan less.',
  'restriction-long-week':
    '{value:min} of restriction in one week on the {side} {limb} is above {limit} min, five sessions at the usual limit. Plan less.',
  'restriction-week-stop':
    'Do not restrict the {side} {limb} for {value:min} in one week. That is above {limit} min, the longest week we found in a trial. Plan less.',
  'sessions-many-day':
    '{value} sessions with restriction in one day are above the {limit} that guidance gives, for short blocks. Plan fewer.',
  'sessions-above-usual':
    '{value} sessions with restriction a week are above the 2 to {limit} that guidance gives for blocks of more than three weeks.',
  'sessions-many-week':
    '{value} sessions with restriction a week are above the 1 to {limit} that practitioners report. Plan days without restriction.',
  'sessions-week-stop':
    'Do not plan {value} sessions with restriction a week. The most we found in a trial is {limit}. Plan fewer.',
} as const satisfies Readonly<Record<GuardCode, string>>;

interface GuardOptions {
  /** Values of the slots besides `value` and `limit`; `value` in other digits too. */
  readonly values?: MessageValues;
  readonly path?: Path;
  /** The most severe step that may be reported. */
  readonly most?: 'caution' | 'stop';
}

/** Makes the cautions of guards, in the words of a catalogue. */
function guardedBy(guards: Readonly<Record<string, Guard>>, catalogue: Catalogue) {
  const caution = cautionsOf(catalogue);
  return (id: string, value: number, { values, path, most }: GuardOptions = {}): Caution[] => {
    const step = stepOf(guards[id]!, value, most);
    if (!step) return [];
    const { severity, code, above, from, source } = step;
    const slots = { value: Number(format(value)), limit: above ?? from!, ...values };
    return [caution(severity, code as never, slots, { path, source })];
  };
}

type GuardCautions<Id extends string> = (id: Id, value: number, options?: GuardOptions) => Caution[];

/** The caution of the most severe step that a figure passes, or none. */
export const guardCautions: GuardCautions<GuardId> = guardedBy(guards, guardMessages);

/** The same of the guards of pressures alone. */
export const pressureCautions: GuardCautions<keyof typeof pressureGuards> = guardedBy(
  pressureGuards,
  pressureGuardMessages,
);
