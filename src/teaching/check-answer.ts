import type { Answer } from '../answer/answer.js';
import { describe, InputError, issue, type InputIssue, type Path } from '../answer/issues.js';
import { fill, type MessageValues } from '../answer/messages.js';
import { plainInput } from '../answer/plain-input.js';
import { answerFault } from '../answer/read-answer.js';
import { KILOGRAMS_PER_POUND, PASCALS_PER_MMHG } from '../quantity/conversion-factors.js';
import { formatUnit } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import type { Unit } from '../quantity/quantities.js';
import { roundToStep } from '../quantity/exact.js';
import { teachingMessages, type CheckCode } from './messages.js';
import { equal, exactOf, slipsOf } from './slips.js';
import { FINITE, OUR_ANSWER } from '../answer/needs.js';

/** What {@link checkAnswer} found. */
export interface AnswerCheck {
  /** `rounded`: right to the digits that were given. */
  readonly verdict: 'right' | 'rounded' | 'wrong';
  /** The step that went wrong, or that nothing did; its sentence is in `messages`. */
  readonly code: CheckCode;
  /** The input whose own working has the wrong step, such as `['occlusion']`; empty for the answer itself. */
  readonly path: Path;
  /** What was given less the answer [unit of the answer]. */
  readonly difference: number;
  /** The numbers that go into the sentence. */
  readonly values: MessageValues;
  /** The sentence, in English. */
  readonly text: string;
}

/** A rounded number may differ from the exact one by this share at most. */
const MOST_ROUNDING = 0.05;

/** Half of the last place that a number is given to. */
function halfPlace(given: number): number {
  const [digits, power = '0'] = String(given).split('e');
  const decimals = (digits!.split('.')[1]?.length ?? 0) - Number(power);
  let half = 0.5;
  for (let place = 0; place < Math.abs(decimals) && place < 20; place += 1) half *= decimals > 0 ? 0.1 : 10;
  return half * (1 + 1e-9);
}

/** Whether a number, given to its digits, represents another. */
const standsFor = (given: number, value: number): boolean =>
  equal(given, value) ||
  (Math.abs(given - value) <= halfPlace(given) && Math.abs(given - value) <= MOST_ROUNDING * Math.abs(value));

/** Units that an answer is mistaken for, and what one of its own is in them. */
const OTHER_UNITS: Partial<Record<Unit, readonly (readonly [string, number])[]>> = {
  'mm[Hg]': [['kPa', PASCALS_PER_MMHG / 1000]],
  kg: [['lb', 1 / KILOGRAMS_PER_POUND]],
  '[lb_av]': [['kg', KILOGRAMS_PER_POUND]],
  s: [['min', 1 / 60]],
};

/** What can be set just below and just above the exact number; nothing where the number was not rounded. */
function neighbours({ rounding }: Answer): readonly number[] {
  if (!rounding) return [];
  const { step, available, from } = rounding;
  if (available) {
    const below = available.filter((load) => load <= from);
    const above = available.filter((load) => load > from);
    return [Math.max(...below), Math.min(...above)];
  }
  if (step === undefined || !(step > 0)) return [];
  const down = roundToStep(from, step, 'down');
  return [down, roundToStep(down + step, step, 'nearest')];
}

/**
 * Tells a student whether a number is right, rounded, or which step went wrong.
 *
 * The answer holds its inputs. So the check can repeat the working with one wrong step: pressures swapped, the
 * percentage left out, the diastolic pressure forgotten, inches for centimetres, repetitions in reserve subtracted, the
 * rests left out, the last rounding missing or to the wrong side. It also looks into the answers that this one is made
 * from; `path` names the one with the wrong step. A number counts as `rounded` where it is right to the digits that it
 * has, and within 5 % of the exact one (`practice`).
 *
 * @param answer - an answer of any function of the library
 * @param given - the student’s number [unit of the answer]
 * @returns the verdict, the step by its code, the difference [unit of the answer] and a sentence.
 * @throws InputError for what is no answer, and for what is not a finite number.
 *
 * @example
 * ```ts
 * import { measuredOcclusionPressure, targetCuffPressure } from 'cuffwork';
 * import { checkAnswer } from 'cuffwork/explain';
 * const occlusion = measuredOcclusionPressure({ valueMmHg: 172, method: 'doppler', limb: 'leg' });
 * const target = targetCuffPressure({ occlusion, percentLop: 50, gaugeStepMmHg: 5 });
 * checkAnswer(target, 85).verdict; // => 'right'
 * checkAnswer(target, 86).text; // => 'You calculated 86 mmHg correctly. The last step is missing: round it to what you can set, 85 mmHg.'
 * checkAnswer(target, 172).code; // => 'check-percent-left-out'
 * ```
 */
export function checkAnswer(answer: Answer, given: number): AnswerCheck {
  const copy = plainInput(answer, OUR_ANSWER) as Answer;
  const issues: InputIssue[] = [];
  const fault = answerFault(copy, copy.kind, [copy.unit], -1e12, 1e12);
  const parts = [copy.kind, copy.unit, copy.equation].every((part) => typeof part === 'string');
  if (fault !== undefined || !parts || typeof copy.inputs !== 'object' || copy.inputs === null) {
    issues.push(issue('wrong-type', ['answer'], OUR_ANSWER, fault ?? 'an object that is no answer'));
  }
  if (typeof given !== 'number' || !Number.isFinite(given)) {
    const code = typeof given === 'number' ? 'not-finite' : 'wrong-type';
    issues.push(issue(code, ['given'], FINITE, describe(given)));
  }
  if (issues.length > 0) throw new InputError(issues);

  const { value, unit, rounding } = copy;
  const exact = exactOf(copy);
  const shared = {
    given: formatUnit(given, unit),
    expected: formatUnit(value, unit),
    from: formatUnit(exact, unit),
    unit,
  };
  const found = (
    verdict: AnswerCheck['verdict'],
    code: CheckCode,
    { path = [], values = {} }: { readonly path?: Path; readonly values?: MessageValues } = {},
  ): AnswerCheck => {
    const all = { ...shared, ...values };
    return { verdict, code, path, difference: given - value, values: all, text: fill(teachingMessages[code], all) };
  };

  if (equal(given, value)) return found('right', 'check-right');
  if (!rounding && standsFor(given, value)) return found('rounded', 'check-rounded');
  const near = neighbours(copy);
  if (near.some((one) => equal(one, given))) return found('wrong', 'check-rounded-wrong-way');
  if (rounding && standsFor(given, exact)) return found('wrong', 'check-not-rounded');
  // A wrong step, before or after the last rounding.
  const { step, to } = rounding ?? {};
  const set = (number: number): number => (step !== undefined && step > 0 ? roundToStep(number, step, to!) : number);
  const slip = slipsOf(copy).find(
    (one) =>
      standsFor(given, one.value) ||
      (rounding !== undefined && equal(given, set(one.value)) && !equal(set(one.value), value)),
  );
  if (slip) return found('wrong', slip.code, slip);
  for (const [other, factor] of OTHER_UNITS[unit] ?? [])
    if (standsFor(given, exact * factor) || standsFor(given, value * factor))
      return found('wrong', 'check-other-unit', { values: { other } });
  for (const factor of [10, 100, 1000, 0.1, 0.01, 0.001])
    if (standsFor(given, exact * factor) || standsFor(given, value * factor))
      return found('wrong', 'check-decimal-point');
  if (near.length > 0 && given > near[0]! && given < near[1]!) return found('wrong', 'check-not-a-step');
  if (Math.abs(given - value) <= halfPlace(given)) return found('wrong', 'check-rounded-too-far');
  return found('wrong', 'check-wrong', { values: { difference: formatUnit(given - value, unit) } });
}
