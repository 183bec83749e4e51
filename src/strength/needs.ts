import { need, type Needed } from '../answer/needs.js';
import type { Lift } from './lifts.js';

/** What inputs of maxima and loads are asked for: a constant each, so that an app ships those it uses. */
export const LEFT_OUT_FOR_EQUATION = ['left-out-for-equation', 'left out for equation {equation}'] as const;
export const READING_FOR_PERCENT = [
  'reading-for-percent',
  'a reading at which {equation} gives above 0, its interval too, and up to {most} %',
] as const;
export const LIFTS_OF_EQUATION = ['lifts-of-equation', '{lifts} for equation {equation}'] as const;
/** The lifts that an equation is for. */
export const liftsOf = (lifts: readonly Lift[], equation: string): Needed =>
  need(LIFTS_OF_EQUATION, { lifts, equation });
export const HEAVIER = [
  'heavier',
  'heavier: {equation} gives less than the load that was lifted, so it does not hold here',
] as const;
export const SEX_WITH_SHARE = ['sex-with-share', 'one the share is known for in the {movement}: {sexes}'] as const;
export const PRINTED_REPETITIONS = [
  'printed-repetitions',
  'a number of repetitions that the {chart} prints: {repetitions}',
] as const;
export const REPETITION_EQUATION = [
  'repetition-equation',
  'a repetition equation: with an intercept it depends on the load',
] as const;
export const WITH_INVERSE = ['with-inverse', 'one with an inverse: {equations}'] as const;
export const ABOVE_FLOOR = ['above-floor', 'above {floor:unit}, where {equation} levels off'] as const;
export const ONE_REPETITION = [
  'one-repetition',
  'a percentage at which {equation} gives at least 1 repetition; it is not exact near the maximum',
] as const;
export const MOST_REPETITIONS = [
  'most-repetitions',
  'a percentage at which {equation} gives at most {most} repetitions; no equation is validated for longer sets, so none at 20 to 40 %',
] as const;
export const LONGEST_SET = [
  'longest-set',
  'at most {range} to failure for {equation}, the longest set any of the equations was tested on; test with a load that allows 10 or fewer',
] as const;
export const NO_REPETITION_TERM = [
  'no-repetition-term',
  '{range} to failure for {equation}, the tests it was fitted on; it has no term for repetitions',
] as const;
export const TURNS_OVER = [
  'turns-over',
  '{range} to failure for {equation}, the range of its tests; it turns over above that',
] as const;
export const SCALE_MARK = ['scale-mark', 'a mark the scale gives repetitions for: {marks}'] as const;
export const MAXIMUM_MAKERS = ['maximum', 'an answer of testedOneRepMax or estimateOneRepMax'] as const;
export const MAXIMUM_OR_NUMBER = [
  'maximum-or-number',
  'an answer of testedOneRepMax or estimateOneRepMax, or a number',
] as const;
export const BODY_MASS_OR_NUMBER = ['body-mass-or-number', 'an answer of bodyMassLoad, or a number'] as const;
export const PLATES = ['plates', 'a list of plates, each { mass, count? }'] as const;
export const MASS_OF_BAR = ['mass-of-bar', 'the mass of the bar'] as const;
export const MOST_KINDS_OF_PLATE = ['most-kinds-of-plate', 'at most {most} kinds'] as const;
export const EACH_MASS_ONCE = ['each-mass-once', 'a mass no other plate has: give the count'] as const;
export const PAIR_OF_PLATES = ['pair-of-plates', 'a list with two of some mass'] as const;
export const FEWER_DECIMALS = ['fewer-decimals', 'masses with fewer decimals, such as 20.41'] as const;
export const LIGHTEST_LOAD = ['lightest-load', 'at least {lightest:unit}, the lightest load you can set'] as const;
export const LIGHT_ENOUGH = [
  'light-enough',
  'able to make {wanted:unit}; the lightest load you can set is {lightest:unit}, {percent} % of the maximum',
] as const;
export const LESS_THAN_BODY = [
  'less-than-body',
  'less than {asked} % of the maximum; body mass alone is {alone} % of the maximum, so {off:unit} would have to be taken off',
] as const;
