import { frozen } from '../quantity/frozen.js';
import type { Severity } from '../answer/answer.js';
import type { CautionCode } from '../answer/codes.js';
import { mostSevereFirst } from './severity.js';

/**
 * Whom a caution is for: the `person` who trains and anyone with them in the gym, the `practitioner`
 * who sets up the session, or readers of the `method` behind a number.
 */
export type Audience = 'person' | 'practitioner' | 'method';

/**
 * Whom each caution and note is for, by its code. A caution is for the person where it changes what is done on the
 * spot; for the practitioner where another reading, cuff, load or test would settle it; a remark on the method
 * changes nothing in this session.
 *
 * @example
 * ```ts
 * import { audiences } from 'cuffwork/plan';
 * audiences['restriction-long-limb']; // => 'person'
 * audiences['percent-not-flow']; // => 'method'
 * ```
 */
export const audiences: Readonly<Partial<Record<CautionCode, Audience>>> = frozen({
  'document-unverified': 'person',
  'measurements-contradict': 'practitioner',
  'blood-pressure-refer': 'person',
  'blood-pressure-very-high': 'person',
  'blood-pressure-high': 'person',
  'screening-incomplete': 'person',
  'day-check-incomplete': 'person',
  'day-check-other-day': 'practitioner',
  'today-pain-severe': 'person',
  'today-pain': 'person',
  'first-session-volume': 'person',
  'thrombosis-score-high': 'person',
  'score-after-surgery': 'practitioner',
  'age-60-and-over': 'person',
  'age-under-18': 'practitioner',
  'symptom-emergency': 'person',
  'symptom-clinician-first': 'person',
  'symptom-lower': 'person',
  'pain-severe': 'person',
  'pain-back-off': 'person',
  'pain-back-off-rose': 'person',
  'pain-hold': 'person',
  'pain-hold-rose': 'person',
  'stopped-early': 'person',

  'estimate-is-a-start': 'person',
  'may-occlude': 'person',
  'below-diastolic': 'person',
  'pressure-above-occlusion': 'person',
  'held-above-tried': 'person',
  'held-above-target': 'person',
  'held-share-above': 'person',
  'held-occludes': 'person',
  'lifted-above-plan': 'person',
  'restriction-long-exercise': 'person',
  'restriction-long-aerobic': 'person',
  'restriction-long-passive': 'person',
  'restriction-long-limb': 'person',
  'reperfusion-short': 'person',
  'both-raised': 'person',
  'load-jump': 'practitioner',
  'load-jump-percent': 'practitioner',
  'pressure-jump': 'practitioner',
  'deload-not-lighter': 'practitioner',
  'cuff-pressure-high': 'person',
  'cuff-pressure-stop': 'person',
  'occlusion-pressure-high': 'practitioner',
  'occlusion-pressure-stop': 'person',
  'percent-closes-artery': 'person',
  'likely-occludes': 'person',
  'restriction-unbroken-stop': 'person',
  'restriction-limb-stop': 'person',
  'restriction-long-day': 'person',
  'restriction-day-stop': 'person',
  'restriction-long-week': 'person',
  'restriction-week-stop': 'person',
  'sessions-many-day': 'person',
  'sessions-above-usual': 'practitioner',
  'sessions-many-week': 'person',
  'sessions-week-stop': 'person',

  'narrow-cuff-on-thigh': 'practitioner',
  'measured-long-ago': 'practitioner',
  'measured-in-other-posture': 'practitioner',
  'measured-on-other-side': 'practitioner',
  'measured-far-from-estimate': 'practitioner',
  'width-converted': 'practitioner',
  'too-low-above': 'practitioner',
  'posture-shifted': 'practitioner',
  'posture-differs': 'practitioner',
  'posture-ignored': 'practitioner',
  'posture-may-differ': 'practitioner',
  'not-measured-that-day': 'practitioner',
  'not-an-occlusion-pressure': 'practitioner',
  'outside-fitted-range': 'practitioner',
  'outside-thigh-index': 'practitioner',
  'arm-outside-bias-range': 'practitioner',
  'true-percent-not-known': 'practitioner',
  'percent-above-usual': 'practitioner',
  'percent-below-usual': 'practitioner',
  'ceiling-reached': 'practitioner',
  'chance-limit-holds': 'practitioner',
  'held-below-target': 'practitioner',
  'held-share-below': 'practitioner',
  'session-shorter-than-sets': 'practitioner',
  'symmetry-without-error': 'practitioner',
  'symmetry-not-detected': 'practitioner',
  'lighter-than-asked': 'practitioner',
  'lighter-reserve-without-cuff': 'practitioner',
  'limb-not-trained': 'practitioner',
  'item-not-recorded': 'practitioner',
  'score-incomplete': 'practitioner',
  'review-above': 'practitioner',
  'review-below': 'practitioner',
  'review-heavy': 'practitioner',
  'percent-moved': 'practitioner',
  'plates-run-out': 'practitioner',
  'above-restricted-loads': 'practitioner',
  'below-restricted-loads': 'practitioner',
  'maximum-of-other-limb': 'practitioner',
  'maximum-without-error': 'practitioner',
  'maximum-not-tested': 'practitioner',
  'many-repetitions': 'practitioner',
  'outside-fitted-repetitions': 'practitioner',
  'outside-population': 'practitioner',
  'population-locked': 'practitioner',
  'load-far-from-fitted': 'practitioner',
  'load-not-at-percent': 'practitioner',
  'above-the-maximum': 'practitioner',
  'younger-than-samples': 'practitioner',
  'reserve-long-set': 'practitioner',
  'load-could-be-added': 'practitioner',

  'percent-not-flow': 'method',
  'pressure-drifts': 'method',
  'posture-not-stated': 'method',
  'posture-shifts-thigh': 'method',
  'posture-shifts-arm': 'method',
  'equation-unconfirmed': 'method',
  'coefficients-unconfirmed': 'method',
  'practitioner-equation': 'method',
  'basis-not-known': 'method',
  'bias-none-accurate': 'method',
  'bias-two-equations': 'method',
  'older-adults-under': 'method',
  'charts-differ': 'method',
  'equations-spread': 'method',
  'people-differ': 'method',
  'maximal-intent': 'method',
  'velocity-between-people': 'method',
  'reserve-inaccurate': 'method',
  'static-share': 'method',
  'timed-sets-no-volume': 'method',
  'total-left-out': 'method',
  'no-equivalence': 'method',
  'different-maximum': 'method',
  'restriction-gives-less-strength': 'method',
  'pressure-adds-little-heavy': 'method',
  'monotony-undefined-rest': 'method',
  'monotony-undefined-equal': 'method',
  'ratio-coupled': 'method',
  'ratio-descriptive': 'method',
  'ratio-undefined': 'method',
  'first-test-too-low': 'practitioner',
  'reserve-underestimated': 'practitioner',
  'cuff-width-below-published': 'practitioner',
  'few-people': 'method',
  'collinear-term': 'method',
  'influential-row': 'method',
  'residuals-not-normal': 'method',
  'residual-spread-changes': 'method',
  'recalibration-no-better': 'method',
  'recalibration-reversed': 'practitioner',
  'differences-not-normal': 'method',
  'spread-changes-with-size': 'method',
  'bias-changes-with-size': 'method',
  'tests-differ': 'method',
});

/** A caution that the table does not have, such as an app’s own, is for the person unless it is a note. */
const audienceOf = ({ code, severity }: { readonly code: string; readonly severity: Severity }): Audience =>
  (Object.hasOwn(audiences, code) && audiences[code as CautionCode]) ||
  (severity === 'note' ? 'practitioner' : 'person');

/** Cautions by whom they are for, each group most severe first. */
export function byAudience<C extends { readonly code: string; readonly severity: Severity }>(
  cautions: readonly C[],
): Record<Audience, C[]> {
  const groups: Record<Audience, C[]> = { person: [], practitioner: [], method: [] };
  for (const message of mostSevereFirst(cautions)) groups[audienceOf(message)].push(message);
  return groups;
}
