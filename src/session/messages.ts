import type { AnswerKind, Caution } from '../answer/answer.js';
import { cautionsOf } from '../answer/sentences.js';
import type { Catalogue } from '../answer/messages.js';

/** The sentences of a session. */
export const sessionMessages = {
  'restriction-long-exercise':
    '{minutes:min} of restriction in one exercise is above the {low} to {high} min that guidance gives.',
  'restriction-long-aerobic':
    '{minutes:min} of restriction in one aerobic exercise is above the {low} to {high} min that guidance gives.',
  'restriction-long-passive':
    '{minutes:min} of unbroken passive restriction is above the {high} min that guidance gives at a time.',
  'reperfusion-short':
    '{seconds} s with the cuff deflated between two exercises on one limb is below the usual {low} min.',
  'pressure-above-occlusion': '{pressure} mmHg is above the occlusion pressure of {occlusion} mmHg.',
  'timed-sets-no-volume': 'Timed sets have no counted repetitions. They add nothing to the volume load.',
  'total-left-out': '{total} is left out: not every exercise has the numbers for it.',
} as const satisfies Catalogue;

/** The sentences of weeks, of symmetry and of sessions compared: no single session has them. */
export const comparisonMessages = {
  'monotony-undefined-rest': 'There was no load all week, so monotony and strain are undefined.',
  'monotony-undefined-equal':
    'Every day has the same load, so their standard deviation is 0 and monotony and strain are undefined.',
  'ratio-undefined': 'The weeks compared with have no load, so the acute to chronic ratio is undefined.',
  'ratio-descriptive':
    'The acute to chronic ratio describes what was done. It cannot tell whether the risk of injury rises or falls. We know of no range that protects.',
  'ratio-coupled':
    'The acute week is part of the chronic weeks too, which makes the two correlate by arithmetic alone.',
  'symmetry-without-error':
    'You gave no error of the measurement, so we do not know what difference it can detect. Give errorPercent.',
  'symmetry-not-detected':
    'No difference can be detected: with these errors, any index from {low} to {high} % may be none.',
  'no-equivalence':
    'These are sums. They do not say that two sessions have the same effect, nor that restriction makes up for load.',
  'restriction-gives-less-strength':
    'Pooled trials: compared with heavy load, light load with restriction gives similar muscle growth and less strength.',
  'pressure-adds-little-heavy':
    'In one trial of 12 weeks more pressure added muscle at 20 % of the maximum (0.78 to 3.22 %) and little at 40 % (4.45 to 5.30 %).',
  'different-maximum':
    'You cannot compare loads of different exercises. Compare only percentages of each exercise’s own maximum.',
} as const satisfies Catalogue;

export const caution = cautionsOf(sessionMessages);
export const comparisonCaution = cautionsOf(comparisonMessages);

/** Totals that some exercises have and others lack, as the sentence calls them. */
export const leftOutNames = {
  'volume-load': 'Volume load',
  'relative-volume-load': 'Relative volume load',
  'pressure-time': 'Pressure × time',
  'relative-pressure-time': 'Pressure × time, relative',
} as const satisfies Partial<Record<AnswerKind, string>>;

/** A total that is left out: its values are codes, its sentence has their words. */
export const leftOutCaution = (total: keyof typeof leftOutNames, missing: string): Caution => ({
  ...caution('note', 'total-left-out', { total: leftOutNames[total] }),
  values: { total, missing },
});
