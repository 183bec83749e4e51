/** What sessions are asked for: a constant each, so that an app ships those it uses. */
export const SCHEME = [
  'scheme',
  "repetitions set by set, such as '30-15-15-15', sets by repetitions, such as '3x10', or sets by time, such as '5x2min' or '45s-30s'",
] as const;
export const TEMPO_PHASES = [
  'tempo',
  "eccentric, bottom, concentric and top seconds, such as '2-0-2-0', '1.5-0-1.5-0', '2020' or '30X0', or the four as an object",
] as const;
export const SETS = ['sets', 'a list of sets'] as const;
export const EXERCISES = ['exercises', 'a list of exercises'] as const;
export const NAME = ['name', 'a name of 1 to {most} characters'] as const;
export const EITHER_SCHEME = ['either-scheme', 'given, or else scheme, but not both'] as const;
export const OR_DURATION = ['or-duration', 'a whole number from {min} to {max:unit}, or durationS'] as const;
export const WITHOUT_EXPLOSIVE = [
  'timed-phases',
  'seconds in every phase, or else durationS in every set, since X has no time',
] as const;
export const LONGER_REPETITION = ['longer-repetition', 'longer than 0 s a repetition'] as const;
export const OR_IN_EVERY_SET = ['or-in-every-set', 'given, or else {field} in every set'] as const;
export const REST_PRESSURE = ['rest-pressure', 'the lower pressure of the rests'] as const;
export const SIDE_OF_PRESSURES = ['side-of-pressures', 'given where a pressure is given for each side'] as const;
export const BELOW_FIELD = ['below-field', 'below {field}'] as const;
export const ALL_OR_NONE = ['all-or-none', 'given in every exercise or in none'] as const;
export const WITHOUT_PRESSURES = ['without-pressures', 'without pressures when there is no restriction'] as const;
export const LEFT_OUT_WITHOUT = ['left-out-without', 'left out unless {field} is given'] as const;
export const LEFT_OUT_UNLESS = ['left-out-unless', 'left out unless {field} is {value}'] as const;
export const LEFT_OUT_UNRESTRICTED = ['left-out-unrestricted', 'left out when there is no restriction'] as const;
export const LEFT_OUT_UNLESS_TURNS = [
  'left-out-unless-turns',
  'left out unless every set is done with one side and then with the other',
] as const;
export const LEFT_OUT_LOADS = [
  'left-out-with-loads',
  'left out where sets have loads of their own; give oneRepMax',
] as const;
export const SEVEN_DAYS = ['seven-days', 'seven days in a row'] as const;
export const AT_MOST_RESTRICTED = ['at-most-restricted', 'at most the sessions of the day with restriction'] as const;
export const AT_MOST_SESSIONS = ['at-most-sessions', 'at most the sessions of the day'] as const;
export const RESTRICTED_OF = [
  'restricted-of',
  'how many of the {count} sessions had restriction, since the day has restriction time',
] as const;
export const ONE_RESTRICTED = ['one-restricted', '1 or more, since the day has restriction time'] as const;
export const EARLIER_WEEKS_LOADS = ['earlier-weeks', 'the loads of the three weeks before'] as const;
export const NUMBER_OR_ANSWER = ['number-or-answer', 'a number, or an answer'] as const;
export const LIKE_LEFT = ['like-left', 'of the kind and unit of left'] as const;
export const LEFT_OUT_FOR_ANSWERS = ['left-out-for-answers', 'left out where answers are given'] as const;
