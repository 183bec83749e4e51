/*
 * The working behind the grade of the six equations of 2024 for older adults with osteopenia. Four coefficients a lift
 * were read in the publication (Sports 2024;12(9):233); what they are the coefficients of was not. It is inferred:
 *
 *   maximum = load × (a0 + a1 × r + a2 × r² + a3 × r³)
 *
 * as in the earlier equation of the kind, whose form was read (J Strength Cond Res 2006;20(4):838–842).
 *
 * - At one repetition it gives 1.00 to 1.01: a load lifted once is the maximum. Nothing was fitted there.
 * - It rises all over the 5 to 16 repetitions of the tests, so it is the maximum over the load and not the load over the
 *   maximum, which falls.
 * - It stays within a tenth of the earlier equation there.
 */
import { equations } from '../../src/index.js';

const { oneRepetitionMaximum } = equations;
const earlier = oneRepetitionMaximum.find(({ id }) => id === 'postmenopausal-2006')!;

export const cubics = oneRepetitionMaximum
  .filter(({ id }) => id.startsWith('osteopenia-'))
  .map((equation) => {
    const tested = Array.from({ length: 12 }, (_, index) => 5 + index);
    return {
      id: equation.id,
      evidence: equation.evidence,
      atOne: equation.apply(1, 1),
      rises: tested.slice(1).every((r) => equation.apply(1, r) > equation.apply(1, r - 1)),
      furthestFromEarlier: Math.max(...tested.map((r) => Math.abs(equation.apply(1, r) / earlier.apply(1, r) - 1))),
    };
  });
