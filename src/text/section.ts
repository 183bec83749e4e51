import { grades } from '../evidence/grades.js';
import { reference, sources, type SourceId } from '../evidence/sources.js';
import { format, unitWords } from '../quantity/format.js';
import { quantities, type Unit } from '../quantity/quantities.js';
import {
  percentReached,
  type Answer,
  type AnswerKind,
  type Assumption,
  type Caution,
  type ReachedPressure,
  type Symbols,
} from '../answer/answer.js';
import { kindWords } from './kinds.js';
import { fill } from '../answer/messages.js';
import { amount, named, saying, sentence, type Say } from '../answer/say.js';
import { charts } from '../strength/repetitions.js';
import { assumptionText } from './assumptions.js';
import { explainWords } from './words.js';
import { workingBy } from './working.js';

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
  involvedValue: 'the involved side',
  otherValue: 'the other side',
  involved: 'the side compared',
  rests: 'rests [s]',
  longestSet: 'repetitions of the longest set',
  timedSets: 'sets by the watch [s]',
  setTimes: 'time of each set [s]',
  warmUp: 'warm-up sets and their rests [s]',
  stretches: 'stretches of restriction [s]',
  longestStretch: 'longest stretch [s]',
  gaps: 'times with the cuff deflated [s]',
  exercises: 'exercises, one by one',
  weekSessions: 'sessions of the week, one by one',
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
  'age-60-and-over': 'age-60-and-over',
};

/** An answer explained, before it is written as text or in another format. */
export interface Section {
  readonly title: string;
  /** Symbol of the answer. */
  readonly symbol: string;
  /** The formula, and the same with the numbers in it. */
  readonly steps: readonly [formula: string, numbers: string];
  /** The result, where the numbers are not the result already. */
  readonly result?: { readonly number: string; readonly unit: string };
  /** What was done to the result: rounding, the percentage reached. */
  readonly notes: readonly string[];
  /** Each symbol with its name and value. */
  readonly glossary: readonly string[];
  /** `glossary` as one sentence. */
  readonly with: string;
  /** What the answer rests on: error, equation, grade, assumptions. */
  readonly grounds: readonly string[];
  readonly cautions: readonly string[];
  readonly sources: readonly string[];
  /** The answers it was worked out from. */
  readonly inner: readonly Section[];
}

/** Puts every word of {@link sectionOf} into `words`, besides the sentences of an answer. */
export function addAnswerWords(words: Record<string, string>): void {
  Object.assign(words, explainWords);
  for (const [kind, { name }] of Object.entries(kindWords)) words[`kind.${kind}`] = name;
  for (const [field, { name }] of Object.entries(quantities)) words[`field.${field}`] = name;
  for (const [field, name] of Object.entries(fieldWords)) words[`field.${field}`] = name;
  for (const [chart, { name }] of Object.entries(charts)) words[`chart.${chart}`] = name;
  for (const [grade, meaning] of Object.entries(grades)) words[`meaning.${grade}`] = meaning;
  for (const [unit, word] of Object.entries(unitWords)) words[`unit.${unit}`] = word;
}

const isAnswer = (value: unknown): value is Answer => Object.hasOwn(Object(value) as object, 'equation');

/** What a kind of answer is called. */
export const kindName = (say: Say, kind: AnswerKind): string => say(`kind.${kind}`, kindWords[kind].name);

/** `assumption: …` */
export const assumedLine = (say: Say, assumption: Assumption): string =>
  say('assumption', explainWords.assumption, { text: assumptionText(say, assumption) });

/** `caution: …` */
export const cautionLine = (say: Say, said: Caution, severity = named(say, 'severity', said.severity)): string =>
  say('with-severity', explainWords['with-severity'], { severity, text: sentence(say, said) });

/** `Limb occlusion pressure: 160 mmHg (95 % interval 75.3–244.7 mmHg)` */
function titleOf({ kind, value, unit, lower, upper, rounding }: Answer, say: Say): string {
  const word = saying(say, explainWords);
  const number = amount(say, value, unit);
  return word('titled-answer', {
    name: kindName(say, kind),
    value:
      lower === undefined || rounding
        ? number
        : word('with-interval', { value: number, lower: format(lower), upper: amount(say, upper!, unit) }),
  });
}

function symbolsOf(answer: Answer, symbols: Symbols, say: Say): { shown: Record<string, string>; glossary: string[] } {
  const shown: Record<string, string> = {};
  const glossary: string[] = [];
  for (const [symbol, use] of Object.entries(symbols)) {
    const field = typeof use === 'string' ? use : use.field;
    const given = answer.inputs[field];
    const quantity = Object.hasOwn(quantities, field) ? quantities[field as keyof typeof quantities] : undefined;
    const name = say(`field.${field}`, quantity?.name ?? fieldWords[field] ?? say(field, field));
    if (isAnswer(given)) {
      shown[symbol] = format(given.rounding?.from ?? given.value);
      glossary.push(`${symbol} ${name} ${amount(say, given.value, given.unit)}`);
    } else if (typeof given === 'number') {
      shown[symbol] = given < 0 ? `(${format(given)})` : format(given);
      const pounds = quantity?.unit === 'kg' && answer.inputs['unit'] === 'lb';
      const unit: Unit | undefined = pounds ? '[lb_av]' : quantity?.unit;
      glossary.push(`${symbol} ${name} ${unit ? amount(say, given, unit) : format(given)}`);
    } else if (typeof use !== 'string') {
      shown[symbol] = format(use.codes[String(given)] ?? NaN);
      const coded = { value: String(given), number: shown[symbol] };
      glossary.push(`${symbol} ${name} ${say('coded-as', explainWords['coded-as'], coded)}`);
    } else {
      shown[symbol] = String(given).includes(' + ') ? `(${String(given)})` : String(given);
      glossary.push(`${symbol} ${name} ${String(given)}`);
    }
  }
  return { shown, glossary };
}

function notesOf({ rounding, value, unit, reached }: Answer, say: Say): string[] {
  const word = saying(say, explainWords);
  const notes: string[] = [];
  if (rounding) {
    const { step, to } = rounding;
    const steps = step !== undefined ? word('in-steps', { step: amount(say, step, unit) }) : word('weights-there-are');
    notes.push(word(`rounded-${to}`, { steps, value: amount(say, value, unit) }));
  }
  if (reached) {
    const share = (percent: number): string => `${percent.toFixed(1)} %`;
    const { lower, upper } = reached;
    const percent = share(percentReached(reached));
    if (lower === undefined) notes.push(word('that-is', { percent }));
    else {
      const range =
        upper === undefined
          ? word('range-from', { lower: share(lower) })
          : word('range-between', { lower: lower.toFixed(1), upper: share(upper) });
      notes.push(word('that-is-perhaps', { percent, range }));
    }
    const { occlusionChancePercent: chance, highestMmHg: highest }: Partial<ReachedPressure> = reached;
    if (chance !== undefined) {
      notes.push(word('chance-that-closes', { chance: chance < 0.05 ? word('chance-very-small') : share(chance) }));
    }
    if (highest !== undefined) {
      notes.push(word('highest-under-limit', { value: amount(say, highest, unit) }));
    }
  }
  return notes;
}

/** An answer put together by hand may leave the slots of a sentence open. */
const filled = (said: Caution): Caution => ({ ...said, text: fill(said.text, said.values) });

/** Lines that were not printed yet; what answers share is printed once. */
const unsaid = (lines: readonly string[], said: Set<string>): string[] =>
  lines.filter((line) => !said.has(line) && said.add(line));

/** A standard deviation and its parts: in the unit of the answer, or as shares of its value. */
function deviationLine({ errors, standardDeviation, scale, unit }: Answer, say: Say): string[] {
  const log = scale === 'log';
  const size = (deviation: number): string => (log ? `${format(100 * deviation)} %` : format(deviation));
  const parts = errors
    ?.map((e) => `${named(say, 'part', e.part)} ${size(e.standardDeviation)} (${named(say, 'grade', e.evidence)})`)
    .join(', ');
  if (!parts) return [];
  const value = log ? size(standardDeviation!) : amount(say, standardDeviation!, unit);
  return [saying(say, explainWords)(log ? 'share-deviation-from' : 'deviation-from', { value, parts })];
}

function groundsOf(answer: Answer, say: Say, said: Set<string>): string[] {
  const { equation, evidence, assumptions } = answer;
  const word = saying(say, explainWords);
  const meaning = say(`meaning.${evidence}`, grades[evidence]);
  return [
    ...deviationLine(answer, say),
    word('equation-and-grade', { equation, grade: named(say, 'grade', evidence), meaning }),
    ...unsaid(
      assumptions.map((one) => assumedLine(say, one)),
      said,
    ),
  ];
}

/** The references of the sources that the library has. */
export const sourceLines = (ids: readonly SourceId[]): string[] =>
  ids.filter((id) => Object.hasOwn(sources, id)).map((id) => `${id}: ${reference(id)}`);

/** An answer with its working and what it rests on, and no more; without what was printed before. */
export function workingOf(answer: Answer, say: Say, said = new Set<string>()): Section {
  const { unit, value, rounding, kind } = answer;
  const { formula, symbols } = workingBy(answer) ?? { formula: format(rounding?.from ?? value), symbols: {} };
  const { shown, glossary } = symbolsOf(answer, symbols, say);
  const numbers = formula.replace(/[A-Za-z_]\w*/g, (name) => (Object.hasOwn(shown, name) ? shown[name]! : name));
  const number = format(rounding?.from ?? value);
  return {
    title: titleOf(answer, say),
    symbol: kindWords[kind].symbol,
    steps: [formula, numbers],
    ...(numbers !== number && { result: { number, unit: say(`unit.${unit}`, unitWords[unit]) } }),
    notes: notesOf(answer, say),
    glossary,
    with: say('with-symbols', explainWords['with-symbols'], { list: glossary.join(', ') }),
    grounds: groundsOf(answer, say, said),
    cautions: [],
    sources: [],
    inner: [],
  };
}

/** The answers that an answer was worked out from. */
const partsOf = ({ inputs }: Answer): Answer[] => Object.values(inputs).flat().filter(isAnswer);

/** The stops of an answer and of what it was worked out from, each once: they come before its number. */
export const stopsOfAnswer = (answer: Answer, say: Say): string[] => [
  ...new Set([
    ...answer.cautions.filter(({ severity }) => severity === 'stop').map((one) => cautionLine(say, filled(one))),
    ...partsOf(answer).flatMap((part) => stopsOfAnswer(part, say)),
  ]),
];

/** An answer explained in full, with the answers it was worked out from. */
export function sectionOf(answer: Answer, say: Say, said = new Set<string>()): Section {
  const word = saying(say, explainWords);
  const { cautions } = answer;
  return {
    ...workingOf(answer, say, said),
    cautions: unsaid(
      cautions.map((one) => cautionLine(say, filled(one))),
      said,
    ),
    sources: unsaid(
      sourceLines(workingBy(answer)?.sources ?? []).map((text) => word('from-source', { text })),
      said,
    ),
    inner: partsOf(answer).map((part) => sectionOf(part, say, said)),
  };
}
