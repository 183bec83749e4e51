import { resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { attempt, sessionTotals, testedOneRepMax } from '../../src/index.js';
import { planSession } from '../../src/plan/index.js';
import { findingsIn } from '../support/compiled.js';

const name = `name: 'row', limb: 'leg', restS: 30`;
const lifted = `oneRepMax, percentOneRepMax: 25`;
const tempo = `tempo: '2-0-2-0'`;
const scheme = `scheme: '30-15-15-15'`;
const counted = `${scheme}, ${tempo}`;
const oneByOne = `sets: [{ repetitions: 30 }]`;
const on = `restriction: 'continuous'`;
const off = `restriction: 'none'`;
const partial = `restriction: 'partial'`;
// Exercises of a plan that lack what is lifted, the sets, or the cuff.
const row = `${name}, ${counted}, ${on}`;
const share = `${name}, ${lifted}, ${on}`;
const bare = `${name}, ${counted}, ${lifted}`;
const walk = `${name}, ${on}, mode: 'aerobic', scheme: '5x2min'`;
const atRest = `${name}, ${on}, mode: 'passive', sets: [{ durationS: 300 }]`;
// Exercises of a session that lack the cuff, or the sets.
const set = `${counted}, restS: 30`;
const cuffed = `${on}, restS: 30`;

/** What the compiler and the function take. */
const right = {
  PlanExercise: [
    `${row}, ${lifted}, step: 2.5`,
    `${row}, load: 15, step: 2.5`,
    `${row}, load: 15, bodyMassPercent: 64`,
    `${row}, bodyMassPercent: 64`,
    `${row}, unloaded: true`,
    `${row}, ${lifted}, load: undefined, step: undefined, side: undefined`,
    `${walk}, intensityPercent: 40`,
    atRest,
    `${share}, ${oneByOne}, ${tempo}`,
    `${share}, sets: [{ durationS: 60 }]`,
    `${bare}, ${on}, percentLop: 60`,
    `${bare}, restriction: 'intermittent'`,
    `${bare}, ${partial}, restPercentLop: 20`,
    `${bare}, ${off}`,
  ],
  Prescription: [
    `${set}, ${on}`,
    `${cuffed}, ${tempo}, sets: [{ repetitions: 30 }, { repetitions: 15 }]`,
    `${cuffed}, sets: [{ durationS: 60 }, { durationS: 60, repetitions: 20 }]`,
    `${cuffed}, scheme: '5x2min'`,
    `${cuffed}, scheme: '45s-30s', ${tempo}`,
    `${set}, ${on}, pressureMmHg: 80, occlusionMmHg: 160, inflatedBeforeS: 10`,
    `${set}, restriction: 'intermittent', pressureMmHg: 80, deflatedAfterS: 5`,
    `${set}, ${partial}, pressureMmHg: 80, restPressureMmHg: 40`,
    `${set}, ${partial}`,
    `${set}, ${off}, load: 20`,
    `${set}, ${off}, load: undefined, oneRepMax: undefined, sets: undefined, pressureMmHg: undefined`,
    `${set}, ${on}, load: 20, oneRepMax`,
    `${set}, ${on}, load: 20, percentOneRepMax: 30`,
  ],
  Session: [`exercises: [{ ${set}, ${on} }]`],
} as const;
type Type = keyof typeof right;

/** What neither takes: the slip, the code, and the fields that the function names. */
const slips: Readonly<Record<Type, readonly (readonly [slip: string, code: string, fields: string])[]>> = {
  PlanExercise: [
    ['a load and a share of a maximum', `${row}, load: 15, ${lifted}`, 'load'],
    ['a maximum without its share', `${row}, oneRepMax`, 'percentOneRepMax'],
    ['a share of no maximum', `${row}, percentOneRepMax: 25`, 'oneRepMax,percentOneRepMax'],
    ['a maximum, and nothing lifted', `${row}, ${lifted}, unloaded: true`, 'unloaded'],
    ['a load, and nothing lifted', `${row}, load: 15, unloaded: true`, 'load'],
    ['body mass, and nothing lifted', `${row}, bodyMassPercent: 64, unloaded: true`, 'bodyMassPercent'],
    ['nothing said of the load', row, 'oneRepMax'],
    ['a bar for a load of your own', `${row}, load: 15, bar: 20, plates: [{ mass: 5 }]`, 'bar,plates'],
    ['a load in walking', `${walk}, load: 15`, 'load'],
    ['a tempo in walking', `${walk}, ${tempo}`, 'tempo'],
    ['repetitions in walking', `${name}, ${on}, mode: 'aerobic', ${scheme}`, 'scheme'],
    ['raised repetitions in walking', `${walk}, raisedFrom: [30]`, 'raisedFrom'],
    ['a last set to failure, at rest', `${atRest}, lastSetToFailure: true`, 'lastSetToFailure'],
    ['an intensity of walking, at rest', `${atRest}, intensityPercent: 40`, 'intensityPercent'],
    ['an intensity of walking, in lifting', `${row}, ${lifted}, intensityPercent: 40`, 'intensityPercent'],
    ['a set counted without a tempo', `${share}, ${oneByOne}`, 'tempo'],
    ['counted without a tempo', `${share}, ${scheme}`, 'tempo'],
    ['sets in notation and one by one', `${row}, ${lifted}, ${oneByOne}`, 'sets'],
    ['no sets', `${share}, ${tempo}`, 'sets'],
    [
      'a load of a set, and its share of the maximum',
      `${share}, ${tempo}, sets: [{ repetitions: 3, load: 20, percentOneRepMax: 30 }]`,
      'sets.0.percentOneRepMax',
    ],
    ['a share of occlusion pressure without a cuff', `${bare}, ${off}, percentLop: 60`, 'percentLop'],
    ['a pressure of the rests in a cuff that stays', `${bare}, ${on}, restPercentLop: 20`, 'restPercentLop'],
    ['no pressure of the rests', `${bare}, ${partial}`, 'restPercentLop'],
    ['a misspelt field', `${row}, ${lifted}, changes: 5`, 'changes'],
    ['a misspelt word', `${bare}, restriction: 'continous'`, 'restriction'],
  ],
  Prescription: [
    ['counted without a tempo', `${cuffed}, ${scheme}`, 'tempo'],
    ['a set counted without a tempo', `${cuffed}, ${oneByOne}`, 'tempo'],
    ['one set of two counted', `${cuffed}, sets: [{ durationS: 60 }, { repetitions: 30 }]`, 'tempo'],
    ['sets in notation and one by one', `${set}, ${oneByOne}, ${on}`, 'sets'],
    ['no sets', `${cuffed}, ${tempo}`, 'sets'],
    ['a pressure of the rests in a cuff that stays', `${set}, ${on}, restPressureMmHg: 40`, 'restPressureMmHg'],
    ['a pressure without a cuff', `${set}, ${off}, pressureMmHg: 80`, 'pressureMmHg'],
    ['an occlusion pressure without a cuff', `${set}, ${off}, occlusionMmHg: 160`, 'occlusionMmHg'],
    ['inflated before, without a cuff', `${set}, ${off}, inflatedBeforeS: 10`, 'inflatedBeforeS'],
    ['deflated later, without a cuff', `${set}, ${off}, deflatedAfterS: 10`, 'deflatedAfterS'],
    ['a maximum, and the share of it', `${set}, ${on}, load: 20, ${lifted}`, 'percentOneRepMax'],
  ],
  Session: [['counted without a tempo', `exercises: [{ ${cuffed}, ${scheme} }]`, 'exercises.0.tempo']],
};

/** The end of what the compiler says of the usual slips: it names the field. */
const said: readonly (readonly [slip: string, said: RegExp])[] = [
  ['a load and a share of a maximum', /property 'oneRepMax' are incompatible.* not assignable to type 'undefined'/],
  ['a share of no maximum', /'oneRepMax' is missing .* required in type 'LiftsShareOfMaximum'/],
  ['counted without a tempo', /'tempo' is missing .* required in type 'CountedScheme'/],
  ['a pressure of the rests in a cuff that stays', /'restP\w+' are incompatible.* not assignable to type 'undefined'/],
  ['no pressure of the rests', /'restPercentLop' is missing .* required in type 'CuffLowerInRests'/],
  ['a misspelt field', /'changes' does not exist/],
  ['a misspelt word', /Did you mean '"continuous"'\?/],
  ['a pressure without a cuff', /property 'pressureMmHg' are incompatible/],
  ['sets in notation and one by one', /property 'sets' are incompatible/],
];

const types = Object.keys(right) as Type[];
const cases = types.flatMap((type) => [
  ...right[type].map((code) => ({ type, slip: 'nothing', code, fields: '' })),
  ...slips[type].map(([slip, code, fields]) => ({ type, slip, code, fields })),
]);

/** What the compiler says of each case, one case a line. */
function complaints(): string[][] {
  const file = resolve('slips.ts');
  const head =
    `import { testedOneRepMax, type Prescription, type Session } from './src/index.js';` +
    `import type { PlanExercise } from './src/plan/index.js'; const oneRepMax = testedOneRepMax({ load: 60 });`;
  const lines = cases.map(({ type, code }, index) => `export const slip${index}: ${type} = { ${code} };`);
  const text = [head, ...lines].join('\n');
  const found = findingsIn(new Map([[file, text]]));
  return cases.map((_, index) =>
    found
      .filter(({ file: source, start }) => source!.getLineAndCharacterOfPosition(start!).line === index + 1)
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' ')),
  );
}

/** The fields that the function names, in an exercise of a plan from its own top. */
function refused(type: Type, code: string): string {
  const given = new Function('oneRepMax', `return { ${code} }`)(testedOneRepMax({ load: 60 })) as object;
  const limbs = [{ limb: 'leg', side: 'left', cuffWidthCm: 10, circumferenceCm: 56, percentLop: 50 }];
  const person = { systolicMmHg: 118, diastolicMmHg: 74, bodyMassKg: 80, posture: 'seated', limbs };
  const ofPlan = type === 'PlanExercise';
  const result = ofPlan
    ? attempt(planSession, { ...person, exercises: [given] } as unknown)
    : attempt(sessionTotals, given as unknown);
  return result.ok ? '' : result.issues.map(({ path }) => path.slice(ofPlan ? 2 : 0).join('.')).join();
}

describe('what the compiler and the function say of a slip', () => {
  const messages = complaints();
  it.each(cases.map((one, index) => ({ ...one, messages: messages[index]! })))(
    'is the same, and no long union: $type, $slip ($code)',
    ({ type, slip, code, fields, messages }) => {
      expect(refused(type, code)).toBe(fields);
      expect(messages, messages.join('\n')).toHaveLength(fields === '' ? 0 : 1);
      const [, end] = said.find(([of]) => of === slip && type !== 'Session') ?? [];
      if (!end) return;
      expect(messages[0]).toMatch(end);
      // A union that is cut short in the message is one that nobody reads.
      expect(messages[0]).not.toMatch(/\.\.\. \d+ more \.\.\. \|/);
    },
  );
});
