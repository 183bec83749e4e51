import { grades } from '../evidence/grades.js';
import { reference, sources, type SourceId } from '../evidence/sources.js';
import { format, formatUnit } from '../quantity/format.js';
import { quantities, type Unit } from '../quantity/quantities.js';
import type { Answer, AnswerKind } from './answer.js';

/** What each kind of answer is called, and its symbol. */
export const kindWords: Record<AnswerKind, { readonly name: string; readonly symbol: string }> = {
  'occlusion-pressure': { name: 'Limb occlusion pressure', symbol: 'LOP' },
  'cuff-pressure': { name: 'Cuff pressure to set', symbol: 'P' },
  'one-repetition-maximum': { name: 'One-repetition maximum', symbol: '1RM' },
  'training-load': { name: 'Training load', symbol: 'w' },
  repetitions: { name: 'Repetitions', symbol: 'N' },
  'volume-load': { name: 'Volume load', symbol: 'VL' },
  'relative-volume-load': { name: 'Relative volume load', symbol: 'VL%' },
  'time-under-tension': { name: 'Time under tension', symbol: 'TUT' },
  'restriction-time': { name: 'Restriction time', symbol: 'T' },
  'longest-restriction': { name: 'Longest unbroken restriction', symbol: 'T' },
  'session-time': { name: 'Session time', symbol: 'T' },
  'repetitions-in-reserve': { name: 'Repetitions in reserve', symbol: 'RIR' },
  'repetitions-to-failure': { name: 'Repetitions to failure', symbol: 'r' },
  'percent-of-maximum': { name: 'Percentage of the maximum', symbol: '%1RM' },
  'body-mass-load': { name: 'Load that body mass is', symbol: 'w' },
  'loaded-weight': { name: 'Weight on the bar', symbol: 'w' },
  'thrombosis-score': { name: 'Thrombosis score (points)', symbol: 'S' },
  'fixed-training-pressure': { name: 'Fixed training pressure', symbol: 'P' },
  'systolic-pressure': { name: 'Systolic pressure', symbol: 'SBP' },
  'diastolic-pressure': { name: 'Diastolic pressure', symbol: 'DBP' },
  'body-mass-volume-load': { name: 'Volume load of body mass', symbol: 'VLb' },
  'peak-load': { name: 'Peak load', symbol: 'w' },
  'peak-percent': { name: 'Peak load as a share of the maximum', symbol: 'p' },
  'partial-restriction-time': { name: 'Restriction time at the lower pressure', symbol: 'T' },
  'reperfusion-time': { name: 'Reperfusion time', symbol: 'T' },
  'pressure-time': { name: 'Pressure × time', symbol: 'PT' },
  'relative-pressure-time': { name: 'Pressure × time, relative', symbol: 'PT%' },
  'session-load': { name: 'Session load', symbol: 'L' },
  'week-load': { name: 'Week load', symbol: 'L' },
  monotony: { name: 'Monotony', symbol: 'M' },
  strain: { name: 'Strain', symbol: 'S' },
  'acute-chronic-ratio': { name: 'Acute to chronic load ratio', symbol: 'r' },
  sessions: { name: 'Sessions', symbol: 'N' },
};

const fieldWords: Readonly<Record<string, string>> = {
  estimate: 'estimated limb occlusion pressure',
  estimateWeight: 'weight left to the estimate',
  measuredMmHg: 'weighted mean of the measurements [mmHg]',
  shiftMmHg: 'of posture [mmHg]',
  posture: 'pooled mean for the posture',
  occlusion: 'limb occlusion pressure',
  oneRepMax: 'one-repetition maximum',
  repetitionsToFailure: 'repetitions to failure',
  repetitionsPerSet: 'repetitions, set by set',
  rests: 'rests [s]',
  longestSet: 'repetitions of the longest set',
  timedSets: 'sets by the watch [s]',
  setTimes: 'time of each set [s]',
  warmUp: 'warm-up sets and their rests [s]',
  stretches: 'stretches of restriction [s]',
  longestStretch: 'longest stretch [s]',
  gaps: 'times with the cuff down [s]',
  exercises: 'exercises, one by one',
  pauses: 'pauses between exercises [s]',
  limbs: 'limbs, exercise by exercise',
  setLoads: 'repetitions × load, set by set',
  pressureSeconds: 'pressure × time [mmHg × s]',
  weekLoad: 'load of the week',
  standardDeviationAu: 'standard deviation of the daily loads [AU]',
  earlierWeeks: 'loads of the three weeks before [AU]',
  sex: 'sex',
  bodyMassLoad: 'load that body mass is',
  perSide: 'plates on each side',
  fraction: 'share of body mass',
  printed: 'percentage printed [%]',
};

const typeset = (formula: string): string => formula.replaceAll('*', '×').replaceAll(' - ', ' − ').replace(/^- /, '−');

const isAnswer = (value: unknown): value is Answer =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, 'formula') && Object.hasOwn(value, 'kind');

const rangeWords = (lower: number | undefined, upper: number | undefined, words: (value: number) => string): string =>
  lower !== undefined && upper !== undefined
    ? `${words(lower)} to ${words(upper)}`
    : lower !== undefined
      ? `${words(lower)} and above`
      : upper !== undefined
        ? `up to ${words(upper)}`
        : 'not known';

/** `160 mmHg (95 % interval 75.3 to 244.7 mmHg)` */
export function headline({ value, unit, lower, upper, rounding }: Answer): string {
  const range = lower !== undefined && upper !== undefined && rounding === undefined;
  return formatUnit(value, unit) + (range ? ` (95 % interval ${format(lower)} to ${formatUnit(upper, unit)})` : '');
}

function symbolWords(answer: Answer): { shown: Record<string, string>; glossary: string[] } {
  const shown: Record<string, string> = {};
  const glossary: string[] = [];
  for (const [symbol, use] of Object.entries(answer.symbols)) {
    const field = typeof use === 'string' ? use : use.field;
    const given = answer.inputs[field];
    const quantity = Object.hasOwn(quantities, field) ? quantities[field as keyof typeof quantities] : undefined;
    const name = quantity?.name ?? fieldWords[field] ?? field;
    if (isAnswer(given)) {
      shown[symbol] = format(given.rounding?.from ?? given.value);
      glossary.push(`${symbol} ${name} ${formatUnit(given.value, given.unit)}`);
    } else if (typeof given === 'number') {
      shown[symbol] = given < 0 ? `(${format(given)})` : format(given);
      const pounds = quantity?.unit === 'kg' && answer.inputs['unit'] === 'lb';
      const unit: Unit | undefined = pounds ? '[lb_av]' : quantity?.unit;
      glossary.push(`${symbol} ${name} ${unit ? formatUnit(given, unit) : format(given)}`);
    } else if (typeof use !== 'string') {
      shown[symbol] = format(use.codes[String(given)] ?? NaN);
      glossary.push(`${symbol} ${name} ${String(given)} (coded ${shown[symbol]})`);
    } else {
      shown[symbol] = String(given).includes(' + ') ? `(${String(given)})` : String(given);
      glossary.push(`${symbol} ${name} ${String(given)}`);
    }
  }
  return { shown, glossary };
}

function roundingWords({ rounding, value, unit, reached }: Answer): string[] {
  const lines: string[] = [];
  if (rounding) {
    const to = rounding.step !== undefined ? `steps of ${formatUnit(rounding.step, unit)}` : 'the weights there are';
    const way = rounding.to === 'down' ? 'rounded down' : 'brought to the nearest';
    lines.push(`${way}, ${to}: ${formatUnit(value, unit)}`);
  }
  if (reached) {
    const percent = (share: number): string => `${share.toFixed(1)} %`;
    const range = reached.lower !== undefined || reached.upper !== undefined;
    const may = range ? `; of the true value it may be ${rangeWords(reached.lower, reached.upper, percent)}` : '';
    lines.push(`that is ${percent(reached.percent)}${may}`);
    const { occlusionChancePercent: chance, highestMmHg: highest } = reached;
    if (chance !== undefined) {
      const words = chance < 0.05 ? 'less than 0.1 %' : percent(chance);
      lines.push(`the chance that it closes the artery fully is ${words}`);
    }
    if (highest !== undefined)
      lines.push(`highest setting under the limit of that chance: ${formatUnit(highest, unit)}`);
  }
  return lines;
}

/** The working of an answer: its formula, the same with the numbers in it, and the result. */
export function workingLines(answer: Answer): string[] {
  const { formula, unit, value, rounding } = answer;
  const { symbol } = kindWords[answer.kind];
  const { shown, glossary } = symbolWords(answer);
  const pad = ' '.repeat(symbol.length);
  const numbers = formula.replace(/[A-Za-z_]\w*/g, (word) => (Object.hasOwn(shown, word) ? shown[word]! : word));
  return [
    `${symbol} = ${typeset(formula)}`,
    `${pad} = ${typeset(numbers)}`,
    ...(numbers === format(rounding?.from ?? value) ? [] : [`${pad} = ${formatUnit(rounding?.from ?? value, unit)}`]),
    ...roundingWords(answer).map((line) => `${pad}   ${line}`),
    ...(glossary.length > 0 ? [`${pad}   with ${glossary.join(', ')}`] : []),
  ];
}

/** What an answer rests on: error, equation, grade, assumptions. */
export function groundLines(answer: Answer): string[] {
  const { errors, standardDeviation, unit, equation, evidence, assumptions } = answer;
  const parts = errors?.map((e) => `${e.part} ${format(e.standardDeviation)} (${e.evidence})`).join(', ');
  return [
    ...(standardDeviation !== undefined && parts
      ? [`standard deviation ${formatUnit(standardDeviation, unit)}, from: ${parts}`]
      : []),
    `equation ${equation}; evidence ${evidence}: ${grades[evidence]}`,
    ...assumptions.map(({ text }) => `taken for granted: ${text}`),
  ];
}

export const sourceLines = (ids: readonly SourceId[]): string[] =>
  ids.filter((id) => Object.hasOwn(sources, id)).map((id) => `${id}: ${reference(id)}`);

export const indent = (lines: readonly string[], by = '  '): string[] => lines.map((line) => (line ? by + line : line));

/** An answer as text, with the answers it was worked out from below it. */
export function explainAnswer(answer: Answer): string[] {
  const inner = Object.values(answer.inputs).flat().filter(isAnswer);
  return [
    `${kindWords[answer.kind].name}: ${headline(answer)}`,
    ...indent([
      ...workingLines(answer),
      ...groundLines(answer),
      ...answer.cautions.map(({ severity, text }) => `${severity}: ${text}`),
      ...sourceLines(answer.sources).map((line) => `source ${line}`),
    ]),
    ...inner.flatMap((part) => ['', ...indent(explainAnswer(part))]),
  ];
}
