import { Math } from '../quantity/maths.js';
import { product, ratio, sum } from '../quantity/exact.js';
import type { Answer, AnswerKind, Inputs } from '../answer/answer.js';
import { interval, normalInterval } from '../answer/interval.js';
import { convertLoad } from '../quantity/convert.js';
import { inFull } from '../quantity/format.js';
import { loadUnitCode, loadUnitOf, type LoadUnit } from '../quantity/quantities.js';
import type { SetInterval } from './schedule.js';
import type { FullPrescription } from './prescription.js';
import { list, total } from './working.js';

/** Volume loads of one exercise: of the load, of body mass, and relative to the maximum. */
export function volumeTotals(full: FullPrescription, setIntervals: readonly SetInterval[]) {
  const { unit, percentOneRepMax, oneRepMax, bodyMassKg, bodyMassPercent } = full;
  const counted = setIntervals.flatMap(({ set: { repetitions, load } }) =>
    repetitions === undefined ? [] : [{ repetitions, load: load ?? 0 }],
  );
  const repetitions = counted.map((set) => set.repetitions);
  const ofSets = { repetitionsPerSet: list(repetitions) };
  const loads = new Set(counted.map(({ load }) => load));
  const uniform = loads.size === 1 ? [...loads][0]! : undefined;
  const all = sum(repetitions);
  const lifted =
    uniform === undefined ? sum(counted.map((set) => product(set.load, set.repetitions))) : product(all, uniform);
  const byHand = counted.map((set) => `${set.repetitions} × ${inFull(set.load)}`).join(' + ') || '0';
  const ofLoad: Inputs = uniform === undefined ? { setLoads: byHand, unit } : { ...ofSets, load: uniform, unit };
  const weighed = full.sets.some(({ load }) => load !== undefined);
  const volumeLoad = (weighed || bodyMassKg !== undefined) && total('volume-load', lifted, loadUnitCode(unit), ofLoad);
  const bodyMassVolumeLoad =
    bodyMassKg !== undefined &&
    bodyMassPercent !== undefined &&
    total('body-mass-volume-load', product(all, bodyMassKg, bodyMassPercent / 100), 'kg', {
      ...ofSets,
      bodyMassKg,
      bodyMassPercent,
    });
  const relativeVolumeLoad = oneRepMax
    ? overMaximum('relative-volume-load', lifted, '1', ofLoad, unit, oneRepMax)
    : percentOneRepMax !== undefined &&
      total('relative-volume-load', product(all, percentOneRepMax / 100), '1', { ...ofSets, percentOneRepMax });
  return {
    ...(volumeLoad && { volumeLoad }),
    ...(bodyMassVolumeLoad && { bodyMassVolumeLoad }),
    ...(relativeVolumeLoad && { relativeVolumeLoad }),
  };
}

/** A mass over the one-repetition maximum, with the maximum’s error. */
function overMaximum<K extends AnswerKind>(
  kind: K,
  mass: number,
  answerUnit: '1' | '%',
  inputs: Inputs,
  unit: LoadUnit,
  oneRepMax: Answer<'one-repetition-maximum'>,
): Answer<K> {
  const scale = answerUnit === '%' ? 100 : 1;
  const value = ratio([convertLoad(mass, unit, loadUnitOf(oneRepMax.unit)), scale], [oneRepMax.value]);
  const { standardDeviation } = oneRepMax;
  const share = standardDeviation === undefined ? undefined : (value * standardDeviation) / oneRepMax.value;
  const part = { part: 'maximum', standardDeviation: share ?? 0, evidence: oneRepMax.evidence } as const;
  return {
    ...total(kind, value, answerUnit, { ...inputs, oneRepMax }, oneRepMax.evidence),
    ...(share !== undefined && { ...interval(value, [part]), assumptions: [normalInterval] }),
  } as Answer<K>;
}

/** The peak of one exercise: its heaviest load, and that as a share of its maximum. */
export function peaks(full: FullPrescription) {
  const { unit, percentOneRepMax, oneRepMax, sets } = full;
  const loads = sets.flatMap(({ load }) => (load === undefined ? [] : [load]));
  const peak = loads.length > 0 ? Math.max(...loads) : undefined;
  const ofPeak = { load: peak ?? 0, unit };
  return {
    peakLoad: peak === undefined ? undefined : total('peak-load', peak, loadUnitCode(unit), ofPeak),
    peakPercentOneRepMax:
      percentOneRepMax !== undefined
        ? total('peak-percent-of-maximum', percentOneRepMax, '%', { percentOneRepMax })
        : peak !== undefined && oneRepMax
          ? overMaximum('peak-percent-of-maximum', peak, '%', ofPeak, unit, oneRepMax)
          : undefined,
  };
}
