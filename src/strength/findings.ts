import { frozen } from '../quantity/frozen.js';
import type { SourceId } from '../evidence/sources.js';
import type { Grade } from '../evidence/grades.js';
import type { Sex } from '../quantity/quantities.js';
import type { OneRepMaxEquationId } from './equations.js';
import type { Lift } from './lifts.js';
import type { ComparisonCode } from './messages.js';

/** What a published comparison found about some equations in some lifts. */
export interface Finding {
  readonly equations: readonly OneRepMaxEquationId[];
  readonly lifts: readonly Lift[];
  readonly sex?: Sex;
  readonly bias: ComparisonCode;
  readonly who: string;
  readonly source: SourceId;
  readonly evidence: Grade;
}

const STUDENTS = {
  who: '67 untrained students, up to 10 repetitions (from memory)',
  source: 'three-powerlifts-1997',
  evidence: 'unconfirmed',
} as const;
const MEN = {
  sex: 'male',
  who: '57 men at 80 % of the maximum',
  source: 'three-lifts-2024',
  evidence: 'published',
} as const;
const WOMEN = {
  sex: 'female',
  who: '62 women at 80 % of the maximum',
  source: 'three-lifts-2024',
  evidence: 'published',
} as const;

/** Published comparisons that name their equations. A comparison that names none gives no equation its figure. */
export const findings: readonly Finding[] = frozen([
  { equations: ['mayhew-1992', 'wathan-1994'], lifts: ['bench-press'], bias: 'bias-none', ...STUDENTS },
  { equations: ['wathan-1994'], lifts: ['squat'], bias: 'bias-none', ...STUDENTS },
  {
    equations: [
      'brzycki-1993',
      'epley-1985',
      'lander-1985',
      'lombardi-1989',
      'mayhew-1992',
      'oconner-1989',
      'wathan-1994',
    ],
    lifts: ['deadlift'],
    bias: 'bias-under',
    ...STUDENTS,
  },
  {
    equations: ['brzycki-1993'],
    lifts: ['bench-press'],
    sex: 'male',
    bias: 'bias-best',
    who: '220 men, up to 10 repetitions',
    source: 'bench-press-men-1995',
    evidence: 'published',
  },
  {
    equations: ['adams-1994', 'baechle-2000', 'brzycki-1993', 'epley-1985', 'lander-1985', 'oconner-1989'],
    lifts: ['bench-press'],
    sex: 'male',
    bias: 'bias-none',
    who: '31 men, 4 to 10 repetitions',
    source: 'bench-press-precision-2010',
    evidence: 'published',
  },
  { equations: ['lombardi-1989'], lifts: ['bench-press', 'squat'], bias: 'bias-best', ...MEN },
  {
    equations: ['brown-1992', 'brzycki-1993', 'lander-1985'],
    lifts: ['bench-press', 'squat'],
    bias: 'bias-best',
    ...WOMEN,
  },
  { equations: ['mayhew-1992', 'wathan-1994', 'welday-1988'], lifts: ['biceps-curl'], bias: 'bias-best', ...WOMEN },
  {
    equations: ['knee-extension-untrained-1993'],
    lifts: ['knee-extension'],
    bias: 'bias-over',
    who: 'the same people after 18 weeks of training',
    source: 'knee-extension-1993',
    evidence: 'published',
  },
]);

/** The published findings on one equation, for one lift and sex where they are given. */
export const findingsOn = (equation: string, lift: Lift | undefined, sex: Sex | undefined): readonly Finding[] =>
  findings.filter(
    (finding) =>
      (finding.equations as readonly string[]).includes(equation) &&
      (lift === undefined || finding.lifts.includes(lift)) &&
      (sex === undefined || finding.sex === undefined || finding.sex === sex),
  );
