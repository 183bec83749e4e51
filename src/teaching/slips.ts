import type { Answer } from '../answer/answer.js';
import type { Path } from '../answer/issues.js';
import type { MessageValues } from '../answer/messages.js';
import type { OcclusionEquation, OcclusionReadings } from '../pressure/equation.js';
import { occlusionEquations } from '../pressure/equations.js';
import { CENTIMETRES_PER_INCH } from '../quantity/conversion-factors.js';
import { convertLoad } from '../quantity/convert.js';
import { format } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { LIMBS, loadUnitOf, POSTURES, type LoadUnit } from '../quantity/quantities.js';
import type { OneRepMaxEquation } from '../strength/equation.js';
import { oneRepMaxEquations } from '../strength/equations.js';
import { inUnit } from '../strength/choose.js';
import type { CheckCode } from './messages.js';

/** A step that can go wrong, and the number that comes out then. */
export interface Slip {
  readonly code: CheckCode;
  /** The input whose own working has the slip: `['occlusion']`; empty for the answer itself. */
  readonly path: Path;
  readonly value: number;
  readonly values?: MessageValues;
}

type Fields = Readonly<Record<string, unknown>>;
/** An answer’s number, worked out again from other inputs; NaN where they do not fit. */
type Again = (fields: Fields) => number;

const isAnswer = (field: unknown): field is Answer =>
  typeof field === 'object' && field !== null && typeof (field as Partial<Answer>).value === 'number';
const number = (field: unknown): number => (typeof field === 'number' ? field : isAnswer(field) ? field.value : NaN);
/** The numbers of a sum, listed or written out: 30 + 15 + 15. */
const terms = (field: unknown): readonly number[] =>
  typeof field === 'string'
    ? [...field.matchAll(/\d+(?:\.\d+)?/g)].map(([digits]) => Number(digits))
    : (Array.isArray(field) ? field : [field]).map(number);
const total = (numbers: readonly number[]): number => numbers.reduce((sum, term) => sum + term, 0);
const PHASES = ['eccentricS', 'bottomS', 'concentricS', 'topS'] as const;
const tension: Again = (fields) =>
  total(terms(fields['repetitionsPerSet'])) * total(PHASES.map((phase) => number(fields[phase])));

const loadUnit = (fields: Fields): LoadUnit => (fields['unit'] === 'lb' ? 'lb' : 'kg');

const readingsFit = (fields: Fields): boolean =>
  (LIMBS as readonly unknown[]).includes(fields['limb']) &&
  (POSTURES as readonly unknown[]).includes(fields['posture']);

/** A mass in the unit of the load; a plain number has it already. */
function mass(field: unknown, unit: LoadUnit): number {
  return isAnswer(field) ? convertLoad(field.value, loadUnitOf(field.unit), unit) : number(field);
}

const occlusionBy =
  ({ apply }: OcclusionEquation): Again =>
  (fields) =>
    readingsFit(fields) ? apply(fields as Required<OcclusionReadings>) : NaN;
const maximumBy =
  (equation: OneRepMaxEquation): Again =>
  (fields) =>
    inUnit(equation, loadUnit(fields))(number(fields['load']), number(fields['repetitionsToFailure']));

/** What works an answer out, by its equation. */
const byEquation: Readonly<Record<string, Again>> = {
  'percent-of-occlusion': (fields) => (number(fields['percentLop']) / 100) * number(fields['occlusion']),
  'percent-of-maximum': (fields) =>
    (number(fields['percentOneRepMax']) / 100) * mass(fields['oneRepMax'], loadUnit(fields)) -
    (fields['bodyMassLoad'] === undefined ? 0 : mass(fields['bodyMassLoad'], loadUnit(fields))),
  'volume-load': (fields) => total(terms(fields['repetitionsPerSet'])) * number(fields['load']),
  'time-under-tension': tension,
  'restriction-time': (fields) => tension(fields) + total(terms(fields['rests'])),
  'session-time': (fields) => tension(fields) + total(terms(fields['rests'])),
  'longest-restriction': (fields) => tension(fields) + total(terms(fields['rests'])),
  ...Object.fromEntries(occlusionEquations.map((equation) => [equation.id, occlusionBy(equation)])),
  ...Object.fromEntries(oneRepMaxEquations.map((equation) => [equation.id, maximumBy(equation)])),
};

/** The same but for rounding errors of the machine. */
export const equal = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));

/** An answer’s number before its last rounding. */
export const exactOf = ({ rounding, value }: Pick<Answer, 'rounding' | 'value'>): number => rounding?.from ?? value;

type Draft = readonly [CheckCode, number, MessageValues?];

/** What an answer may be a percentage of. */
const PERCENTAGES = ['percentLop', 'percentOneRepMax'] as const;

function percentDrafts(fields: Fields, again: Again): Draft[] {
  const name = PERCENTAGES.find((field) => fields[field] !== undefined);
  if (!name) return [];
  const percent = number(fields[name]);
  const values = { percent };
  const whole = again({ ...fields, [name]: 100 });
  return [
    ['check-percent-left-out', whole, values],
    ['check-percent-left-over', again({ ...fields, [name]: 100 - percent }), values],
    ['check-percent-divided', whole / (percent / 100), values],
  ];
}

function readingDrafts(fields: Fields, again: Again, equation: string): Draft[] {
  if (!readingsFit(fields)) return [];
  const { systolicMmHg, diastolicMmHg, circumferenceCm, cuffWidthCm } = fields;
  const value = again(fields);
  const others = occlusionEquations.filter(({ id }) => id !== equation);
  return [
    ['check-swapped-pressures', again({ ...fields, systolicMmHg: diastolicMmHg, diastolicMmHg: systolicMmHg })],
    ['check-diastolic-left-out', value - number(diastolicMmHg), { diastolic: number(diastolicMmHg) }],
    ['check-posture-left-out', again({ ...fields, posture: 'supine' })],
    ['check-swapped-lengths', again({ ...fields, circumferenceCm: cuffWidthCm, cuffWidthCm: circumferenceCm })],
    [
      'check-circumference-in-inches',
      again({ ...fields, circumferenceCm: number(circumferenceCm) / CENTIMETRES_PER_INCH }),
    ],
    ['check-width-in-inches', again({ ...fields, cuffWidthCm: number(cuffWidthCm) / CENTIMETRES_PER_INCH })],
    ...others.map((other): Draft => [
      'check-other-equation',
      occlusionBy(other)(fields),
      { other: other.id, equation },
    ]),
  ];
}

function repetitionDrafts(fields: Fields, again: Again, equation: string): Draft[] {
  if (fields['repetitionsToFailure'] === undefined) return [];
  const repetitions = number(fields['repetitionsToFailure']);
  const reserve = fields['repetitionsInReserve'] === undefined ? 0 : number(fields['repetitionsInReserve']);
  const to = (repetitionsToFailure: number): number => again({ ...fields, repetitionsToFailure });
  const others = oneRepMaxEquations.filter(({ id }) => id !== equation);
  return [
    ['check-reserve-left-out', to(repetitions - reserve), { repetitions }],
    ['check-reserve-subtracted', to(repetitions - 2 * reserve), { repetitions }],
    ...[1, -1].map((more): Draft => {
      const counted = repetitions + more;
      return ['check-one-repetition-off', to(counted), { counted: format(counted), repetitions }];
    }),
    ...others.map((other): Draft => ['check-other-equation', maximumBy(other)(fields), { other: other.id, equation }]),
  ];
}

function sessionDrafts(fields: Fields, again: Again): Draft[] {
  if (fields['repetitionsPerSet'] === undefined) return [];
  const counts = terms(fields['repetitionsPerSet']);
  const drafts: Draft[] = [];
  if (fields['load'] !== undefined) drafts.push(['check-load-left-out', total(counts)]);
  if (fields['rests'] !== undefined) {
    const rests = terms(fields['rests']);
    drafts.push(['check-rests-left-out', again({ ...fields, rests: [] })]);
    drafts.push(['check-rest-after-last-set', again({ ...fields, rests: [...rests, rests.at(-1) ?? 0] })]);
  }
  if (fields['eccentricS'] !== undefined)
    drafts.push(['check-one-phase', again({ ...fields, bottomS: 0, concentricS: 0, topS: 0 })]);
  drafts.push(['check-one-set', again({ ...fields, repetitionsPerSet: [counts[0] ?? 0] })]);
  return drafts;
}

/** The numbers that a wrong step gives, likely steps first; none where the working is not known here. */
export function slipsOf({
  equation,
  inputs,
  ...answer
}: Pick<Answer, 'equation' | 'inputs' | 'rounding' | 'value'>): Slip[] {
  const again = Object.hasOwn(byEquation, equation) ? byEquation[equation] : undefined;
  const exact = exactOf(answer);
  if (!again || !equal(again(inputs), exact)) return [];
  const own = [
    ...percentDrafts(inputs, again),
    ...readingDrafts(inputs, again, equation),
    ...repetitionDrafts(inputs, again, equation),
    ...sessionDrafts(inputs, again),
  ].map(([code, value, values]): Slip => ({ code, path: [], value, ...(values && { values }) }));
  const before = ['occlusion', 'oneRepMax'].flatMap((field) => {
    const input = inputs[field];
    if (!isAnswer(input) || typeof input.inputs !== 'object') return [];
    return slipsOf(input).map((slip): Slip => ({
      ...slip,
      path: [field, ...slip.path],
      value: again({ ...inputs, [field]: { ...input, value: slip.value } }),
    }));
  });
  return [...own, ...before].filter(({ value }) => Number.isFinite(value) && !equal(value, exact));
}
