/*
 * Tries the curves on real people: circumferences and blood pressures of 18 170 adults of the US National Health and
 * Nutrition Examination Survey 1999–2006 (public domain). The file is not part of the project; the figures are, in
 * survey-figures.json. To make them anew, give the file (columns sex, ageYears, thighCm, armCm, systolicMmHg,
 * diastolicMmHg, surveyWeight):
 *
 *   npx tsx docs/working/survey-figures.ts file.csv > docs/working/survey-figures.json
 */
import { readFileSync } from 'node:fs';
import { estimateOcclusionPressure } from '../../src/index.js';

interface Person {
  readonly sex: string;
  readonly age: number;
  readonly weight: number;
  readonly circumferenceCm: Readonly<Record<'leg' | 'arm', number>>;
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
}

function peopleOf(file: string): Person[] {
  const [head, ...lines] = readFileSync(file, 'utf8').trim().split('\n');
  const names = head!.replaceAll('"', '').split(',');
  return lines.map((line) => {
    const cells = line.replaceAll('"', '').split(',');
    const cell = (name: string): number => Number(cells[names.indexOf(name)] || NaN);
    return {
      sex: cells[names.indexOf('sex')]!,
      age: cell('ageYears'),
      weight: cell('surveyWeight'),
      circumferenceCm: { leg: cell('thighCm'), arm: cell('armCm') },
      systolicMmHg: cell('systolicMmHg'),
      diastolicMmHg: cell('diastolicMmHg'),
    };
  });
}

/** Weighted mean and standard deviation, to one digit. */
function spread(values: readonly number[], weights: readonly number[]) {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = values.reduce((sum, value, i) => sum + weights[i]! * value, 0) / total;
  const variance = values.reduce((sum, value, i) => sum + weights[i]! * (value - mean) ** 2, 0) / total;
  const round = (value: number): number => Number(value.toFixed(1));
  return { mean: round(mean), standardDeviation: round(Math.sqrt(variance)) };
}

const PLACES = [
  ['leg', 5, 'supine'],
  ['leg', 10, 'supine'],
  ['leg', 12, 'supine'],
  ['leg', 12, 'seated'],
  ['leg', 12, 'standing'],
  ['leg', 13.5, 'supine'],
  ['leg', 18, 'supine'],
  ['arm', 5, 'supine'],
  ['arm', 6, 'supine'],
  ['arm', 10, 'supine'],
  ['arm', 12, 'supine'],
  ['arm', 13, 'supine'],
] as const;

/** A pressure reading that crosses, or is impossible, is an error of the reading: refused, and counted. */
const plausible = ({ systolicMmHg, diastolicMmHg }: Person): boolean =>
  diastolicMmHg >= 40 && systolicMmHg > diastolicMmHg;

export function figuresOf(people: readonly Person[]) {
  const usable = people.filter(plausible);
  const young = usable.filter(({ age }) => age >= 18 && age <= 39);
  const whole = (rows: readonly Person[], of: (one: Person) => number) => {
    const there = rows.filter((one) => !Number.isNaN(of(one)));
    return spread(
      there.map(of),
      there.map(({ weight }) => weight),
    );
  };
  return {
    people: people.length,
    usable: usable.length,
    young: {
      people: young.length,
      systolic: whole(young, ({ systolicMmHg }) => systolicMmHg),
      diastolic: whole(young, ({ diastolicMmHg }) => diastolicMmHg),
      thigh: whole(young, ({ circumferenceCm }) => circumferenceCm.leg),
      arm: whole(young, ({ circumferenceCm }) => circumferenceCm.arm),
    },
    estimates: PLACES.map(([limb, cuffWidthCm, posture]) => {
      const estimate = (one: Person) =>
        estimateOcclusionPressure({
          limb,
          cuffWidthCm,
          posture,
          circumferenceCm: one.circumferenceCm[limb],
          systolicMmHg: one.systolicMmHg,
          diastolicMmHg: one.diastolicMmHg,
        });
      const answers = usable
        .filter(({ circumferenceCm }) => !Number.isNaN(circumferenceCm[limb]))
        .map((one) => ({ one, answer: estimate(one) }));
      const youngOnes = answers.filter(({ one }) => one.age >= 18 && one.age <= 39);
      return {
        limb,
        cuffWidthCm,
        posture,
        people: answers.length,
        ...spread(
          answers.map(({ answer }) => answer.value),
          answers.map(({ one }) => one.weight),
        ),
        young: spread(
          youngOnes.map(({ answer }) => answer.value),
          youngOnes.map(({ one }) => one.weight),
        ),
        atOrBelowDiastolic: answers.filter(({ one, answer }) => answer.value <= one.diastolicMmHg).length,
        lowerAtOrBelowDiastolic: answers.filter(({ one, answer }) => answer.lower! <= one.diastolicMmHg).length,
      };
    }),
  };
}

const [, script, file] = process.argv;
if (script?.endsWith('survey-figures.ts') && file) {
  console.log(JSON.stringify(figuresOf(peopleOf(file)), null, 2));
}
