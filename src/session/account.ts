import {
  interval,
  normalInterval,
  type Answer,
  type AnswerKind,
  type Caution,
  type Inputs,
  type Symbols,
} from '../answer/answer.js';
import { kindWords } from '../answer/explain.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { convertLoad, KILOGRAMS_PER_POUND } from '../quantity/convert.js';
import { decimal, product, sum, type Decimal } from '../quantity/decimal.js';
import { format } from '../quantity/format.js';
import { loadUnitCode, type LoadUnit, type Unit } from '../quantity/quantities.js';
import { byLimb, layOutSession, type Bout, type ExerciseLayout, type Stretch } from './layout.js';
import {
  fullSession,
  onSide,
  takesTurns,
  type FullPrescription,
  type FullSession,
  type Place,
  type SessionInput,
} from './prescription.js';
import { assumption, caution } from './messages.js';

/** What one exercise added up to. */
export interface ExerciseTotals {
  readonly repetitions: Answer<'repetitions'>;
  /** Present when a load was given, or a body mass: then of the load alone, which may be 0. */
  readonly volumeLoad?: Answer<'volume-load'>;
  /** Present when a share of body mass was given. */
  readonly bodyMassVolumeLoad?: Answer<'body-mass-volume-load'>;
  /** Present when a maximum or a percentage of it was given. */
  readonly relativeVolumeLoad?: Answer<'relative-volume-load'>;
  readonly timeUnderTension: Answer<'time-under-tension'>;
  /** Any cuff up at its full pressure. */
  readonly restrictionTime: Answer<'restriction-time'>;
  /** No cuff at its full pressure and any at its lower one; present with partial restriction. */
  readonly partialRestrictionTime?: Answer<'partial-restriction-time'>;
  /** Longest time with a cuff up, at either pressure. */
  readonly longestRestriction: Answer<'longest-restriction'>;
  /** Every cuff down between two restrictions; present where there is such a time. */
  readonly reperfusionTime?: Answer<'reperfusion-time'>;
  /** Summed over limbs; present when pressures were given. */
  readonly pressureTime?: Answer<'pressure-time'>;
  /** Summed over limbs; present when pressures and occlusion pressures were given. */
  readonly relativePressureTime?: Answer<'relative-pressure-time'>;
  readonly sessionTime: Answer<'session-time'>;
  readonly cautions: readonly Caution[];
}

/** What one limb went through in the session. */
export interface LimbExposure extends Place {
  /** Number of exercises with its cuff up. */
  readonly exercises: number;
  /** Repetitions this limb took part in; both sides of a two-sided exercise are told the same. */
  readonly repetitions: Answer<'repetitions'>;
  readonly timeUnderTension: Answer<'time-under-tension'>;
  readonly restrictionTime: Answer<'restriction-time'>;
  readonly partialRestrictionTime?: Answer<'partial-restriction-time'>;
  readonly longestRestriction: Answer<'longest-restriction'>;
  readonly reperfusionTime?: Answer<'reperfusion-time'>;
  readonly pressureTime?: Answer<'pressure-time'>;
  readonly relativePressureTime?: Answer<'relative-pressure-time'>;
  readonly cautions: readonly Caution[];
}

/** What a session added up to: as a whole, for each limb and for each exercise. */
export interface SessionTotals extends ExerciseTotals {
  /** Heaviest load lifted. */
  readonly peakLoad?: Answer<'peak-load'>;
  /** Heaviest load as a share of its maximum. */
  readonly peakPercent?: Answer<'peak-percent'>;
  /** Present when a session RPE was given. */
  readonly sessionLoad?: Answer<'session-load'>;
  readonly limbs: readonly LimbExposure[];
  readonly exercises: readonly { readonly name?: string; readonly totals: ExerciseTotals }[];
}

/** How a total was worked out, as text that can be checked. */
interface Working {
  readonly formula: string;
  readonly symbols: Symbols;
  readonly inputs: Inputs;
}

const list = (values: readonly number[]): string => values.map(format).join(' + ') || '0';
const seconds = (times: readonly Decimal[]): string => list(times.map((time) => time.toNumber()));
const plus = (times: readonly Decimal[]): Decimal => times.reduce((total, time) => total.plus(time), decimal(0));

/** A total that is the sum of a list. */
const listed = (symbol: string, field: string, values: string): Working => ({
  formula: symbol,
  symbols: { [symbol]: field },
  inputs: { [field]: values },
});
const nothing: Working = { formula: '0', symbols: {}, inputs: {} };

/** Workings added to one another; those that are not there are passed over. */
const added = (...parts: readonly (Working | false)[]): Working => {
  const there = parts.filter((part) => part !== false);
  if (there.length === 0) return nothing;
  return {
    formula: there.map(({ formula }) => formula).join(' + '),
    symbols: Object.assign({}, ...there.map(({ symbols }) => symbols)) as Symbols,
    inputs: Object.assign({}, ...there.map(({ inputs }) => inputs)) as Inputs,
  };
};

/** A sum of what was given: exact, so it has no interval. */
const total = <K extends AnswerKind>(
  kind: K,
  value: number,
  unit: Unit,
  { formula, symbols, inputs }: Working,
  evidence: Grade,
  ...sources: readonly SourceId[]
): Answer<K> => ({
  kind,
  value,
  unit,
  equation: kind,
  evidence,
  formula,
  symbols,
  inputs,
  assumptions: [],
  cautions: [],
  sources,
});

const MINUTE = 60;
const LIMB_LIMIT_S = 20 * MINUTE;
const EXERCISE_LIMIT_S = { resistance: 10 * MINUTE, aerobic: 20 * MINUTE, passive: 5 * MINUTE } as const;
const EXERCISE_CAUTION = {
  resistance: 'restriction-long-exercise',
  aerobic: 'restriction-long-aerobic',
  passive: 'restriction-long-passive',
} as const;
const REPERFUSION_S = 3 * MINUTE;

const limbCautions = (restrictedS: number): Caution[] =>
  restrictedS > LIMB_LIMIT_S
    ? [caution('caution', 'restriction-long-limb', { minutes: format(restrictedS / MINUTE) })]
    : [];

/** The restriction times of a limb’s exercises, added up. */
export function limbRestriction(times: readonly Answer<'restriction-time'>[]) {
  const values = times.map(({ value }) => value);
  const value = sum(values);
  return {
    restrictionTime: total('restriction-time', value, 's', listed('T', 'exercises', list(values)), 'practice'),
    cautions: limbCautions(value),
  };
}

/** What stretches of restriction add up to. */
function tally(stretches: readonly Stretch[]) {
  const full: Decimal[] = [];
  const partial: Decimal[] = [];
  const runs: Decimal[] = [];
  const gaps: Decimal[] = [];
  let before: Stretch | undefined;
  for (const stretch of stretches) {
    const { fromS, toS, state } = stretch;
    const durationS = toS.minus(fromS);
    (state === 'full' ? full : partial).push(durationS);
    if (before?.toS.eq(fromS)) runs.push(runs.pop()!.plus(durationS));
    else {
      if (before) gaps.push(fromS.minus(before.toS));
      runs.push(durationS);
    }
    before = stretch;
  }
  const longest = runs.reduce((most, run) => (run.gt(most) ? run : most), decimal(0));
  return { full, partial, longest, gaps };
}

/** The restriction of a limb, or of all of them, each total with the stretches it is made of. */
function restrictionTotals(stretches: readonly Stretch[]) {
  const { full, partial, longest, gaps } = tally(stretches);
  const time = <K extends AnswerKind>(kind: K, times: readonly Decimal[], field: string) =>
    total(kind, plus(times).toNumber(), 's', listed('T', field, seconds(times)), 'practice');
  return {
    restrictionTime: time('restriction-time', full, 'stretches'),
    ...(partial.length > 0 && { partialRestrictionTime: time('partial-restriction-time', partial, 'stretches') }),
    longestRestriction: time('longest-restriction', [longest], 'longestStretch'),
    ...(gaps.length > 0 && { reperfusionTime: time('reperfusion-time', gaps, 'gaps') }),
  };
}

const TEMPO = { e: 'eccentricS', b: 'bottomS', c: 'concentricS', t: 'topS' } as const;
const isCounted = ({ set }: Bout): boolean => set.durationS === undefined;
const repetitionsOf = (bouts: readonly Bout[]): number[] =>
  bouts.flatMap(({ set }) => (set.repetitions === undefined ? [] : [set.repetitions]));

/** The time of sets: repetitions at the tempo, and sets by the watch. */
function workWorking({ tempo }: FullPrescription, bouts: readonly Bout[]): Working {
  const counted = bouts.filter(isCounted);
  const timed = bouts.filter((bout) => !isCounted(bout));
  return added(
    counted.length > 0 && {
      formula: 'R * (e + b + c + t)',
      symbols: { R: 'repetitionsPerSet', ...TEMPO },
      inputs: { repetitionsPerSet: list(repetitionsOf(counted)), ...tempo },
    },
    timed.length > 0 && listed('S', 'timedSets', seconds(timed.map(({ durationS }) => durationS))),
  );
}

/**
 * The restriction of one exercise. Where the sides do not take turns its totals are shown as sets and rests, otherwise
 * as stretches of the clock.
 */
function exerciseRestriction({ full, bouts, rests, any }: ExerciseLayout) {
  const totals = restrictionTotals(any);
  const { restriction, side } = full;
  if (takesTurns(side)) return totals;
  const working = bouts.filter(({ warmUp }) => !warmUp);
  const held = rests.filter(({ warmUp }) => !warmUp).map(({ durationS }) => durationS);
  const before = full.inflatedBeforeS > 0 && listed('before', 'inflatedBeforeS', format(full.inflatedBeforeS));
  const after = full.deflatedAfterS > 0 && listed('after', 'deflatedAfterS', format(full.deflatedAfterS));
  const inRests = held.length > 0 && listed('rest', 'rests', seconds(held));
  const inSets = workWorking(full, working);
  const whole = added(before, inSets, inRests, after);
  const sets = added(before, inSets, after);
  const restricted = { continuous: whole, intermittent: sets, partial: sets, none: nothing }[restriction];
  const simple = !before && !after && working.every(isCounted) && held.length === working.length - 1;
  const longestSet = Math.max(...repetitionsOf(working));
  const oneSet = simple && {
    formula: 'n * (e + b + c + t)',
    symbols: { n: 'longestSet', ...TEMPO },
    inputs: { longestSet, ...full.tempo },
  };
  const unbroken = { continuous: whole, intermittent: oneSet, partial: whole, none: nothing }[restriction];
  return {
    ...totals,
    restrictionTime: { ...totals.restrictionTime, ...restricted },
    ...(totals.partialRestrictionTime &&
      inRests && { partialRestrictionTime: { ...totals.partialRestrictionTime, ...inRests } }),
    longestRestriction: { ...totals.longestRestriction, ...unbroken },
  };
}

/** Pressure × time of one limb in one exercise. */
function pressureTotals({ occlusionMmHg }: FullPrescription, { side }: Place, stretches: readonly Stretch[]) {
  const times = new Map<number, Decimal>();
  for (const { fromS, toS, pressureMmHg } of stretches) {
    if (pressureMmHg === undefined) return {};
    times.set(pressureMmHg, (times.get(pressureMmHg) ?? decimal(0)).plus(toS.minus(fromS)));
  }
  if (times.size === 0) return {};
  const terms = [...times].map(([pressure, time]) => `${format(pressure)} × ${format(time.toNumber())}`).join(' + ');
  const mmHgSeconds = plus([...times].map(([pressure, time]) => time.times(decimal(pressure))));
  const inputs = { pressureSeconds: terms };
  const working = { formula: 'Pt / 60', symbols: { Pt: 'pressureSeconds' }, inputs };
  const pressureTime = total('pressure-time', mmHgSeconds.div(MINUTE).toNumber(), 'mm[Hg].min', working, 'practice');
  if (occlusionMmHg === undefined) return { pressureTime };
  const occlusion = onSide(occlusionMmHg, side);
  const relative = mmHgSeconds.times(100).div(decimal(occlusion)).div(MINUTE);
  return {
    pressureTime,
    relativePressureTime: total(
      'relative-pressure-time',
      relative.toNumber(),
      '%.min',
      {
        formula: '100 * Pt / LOP / 60',
        symbols: { Pt: 'pressureSeconds', LOP: 'occlusionMmHg' },
        inputs: { ...inputs, occlusionMmHg: occlusion },
      },
      'practice',
    ),
  };
}

/** The same total of several parts, added up; nothing unless every part has it. One part is its own total. */
function summed<K extends AnswerKind>(parts: readonly (Answer<K> | undefined)[], field: string): Answer<K> | undefined {
  const [first] = parts;
  if (!first || parts.length === 1) return first;
  const there = parts.filter((part) => part !== undefined);
  if (there.length < parts.length) return undefined;
  const mixed = there.some(({ unit }) => unit !== first.unit);
  const inUnit = ({ value, unit }: Answer): number =>
    mixed && unit === '[lb_av]' ? convertLoad(value, 'lb', 'kg') : value;
  const values = there.map(inUnit);
  const unit = mixed ? 'kg' : first.unit;
  const sources = [...new Set(there.flatMap((part) => part.sources))];
  return total(first.kind, sum(values), unit, listed('E', field, list(values)), first.evidence, ...sources);
}

/** Volume loads of one exercise: of the load, of body mass, and relative to the maximum. */
function volumeTotals(full: FullPrescription, bouts: readonly Bout[]) {
  const { unit, percent, oneRepMax, bodyMassKg, bodyMassPercent } = full;
  const counted = bouts.flatMap(({ set: { repetitions, load } }) =>
    repetitions === undefined ? [] : [{ repetitions, load: load ?? 0 }],
  );
  const repetitions = counted.map((set) => set.repetitions);
  const R = { R: 'repetitionsPerSet' };
  const ofSets = { repetitionsPerSet: list(repetitions) };
  const loads = new Set(counted.map(({ load }) => load));
  const uniform = loads.size === 1 ? [...loads][0]! : undefined;
  const lifted = plus(counted.map((set) => decimal(set.load).times(set.repetitions)));
  const byHand = counted.map((set) => `${set.repetitions} × ${format(set.load)}`).join(' + ') || '0';
  const ofLoad: Working =
    uniform === undefined
      ? { formula: 'RW', symbols: { RW: 'setLoads' }, inputs: { setLoads: byHand, unit } }
      : { formula: 'R * w', symbols: { ...R, w: 'load' }, inputs: { ...ofSets, load: uniform, unit } };
  const weighed = full.sets.some(({ load }) => load !== undefined);
  const volumeLoad =
    weighed || bodyMassKg !== undefined
      ? total('volume-load', lifted.toNumber(), loadUnitCode(unit), ofLoad, 'published', 'volume-methods-2009')
      : undefined;
  const bodyMassVolumeLoad =
    bodyMassKg !== undefined && bodyMassPercent !== undefined
      ? total(
          'body-mass-volume-load',
          product(sum(repetitions), bodyMassKg, bodyMassPercent / 100),
          'kg',
          {
            formula: 'R * m * s / 100',
            symbols: { ...R, m: 'bodyMassKg', s: 'bodyMassPercent' },
            inputs: { ...ofSets, bodyMassKg, bodyMassPercent },
          },
          'unconfirmed',
          'volume-methods-2009',
        )
      : undefined;
  return {
    ...(volumeLoad && { volumeLoad }),
    ...(bodyMassVolumeLoad && { bodyMassVolumeLoad }),
    ...(percent !== undefined && {
      relativeVolumeLoad: total(
        'relative-volume-load',
        product(sum(repetitions), percent / 100),
        '1',
        { formula: 'R * p / 100', symbols: { ...R, p: 'percent' }, inputs: { ...ofSets, percent } },
        'unconfirmed',
        'monitoring-2016',
      ),
    }),
    ...(oneRepMax && { relativeVolumeLoad: overMaximum('relative-volume-load', lifted, '1', ofLoad, unit, oneRepMax) }),
  };
}

/** A mass over the one-repetition maximum, with the maximum’s error. */
function overMaximum<K extends AnswerKind>(
  kind: K,
  mass: Decimal,
  answerUnit: '1' | '%',
  { formula, symbols, inputs }: Working,
  unit: LoadUnit,
  oneRepMax: Answer<'one-repetition-maximum'>,
): Answer<K> {
  const maximumUnit = oneRepMax.unit === '[lb_av]' ? 'lb' : 'kg';
  const factor = unit === maximumUnit ? '' : unit === 'lb' ? ` * ${KILOGRAMS_PER_POUND}` : ` / ${KILOGRAMS_PER_POUND}`;
  const scale = answerUnit === '%' ? 100 : 1;
  const value = decimal(convertLoad(mass.toNumber(), unit, maximumUnit))
    .times(scale)
    .div(decimal(oneRepMax.value))
    .toNumber();
  const { standardDeviation } = oneRepMax;
  const share = standardDeviation === undefined ? undefined : (value * standardDeviation) / oneRepMax.value;
  const evidence = kind === 'relative-volume-load' ? 'unconfirmed' : oneRepMax.evidence;
  const part = { part: 'maximum', standardDeviation: share ?? 0, evidence: oneRepMax.evidence } as const;
  return {
    ...total(
      kind,
      value,
      answerUnit,
      {
        formula: `${answerUnit === '%' ? '100 * ' : ''}${formula}${factor} / M`,
        symbols: { ...symbols, M: 'oneRepMax' },
        inputs: { ...inputs, oneRepMax },
      },
      evidence,
      ...(kind === 'relative-volume-load' ? (['monitoring-2016'] as const) : []),
    ),
    ...(share !== undefined && { ...interval(value, [part]), assumptions: [normalInterval] }),
  };
}

/** The peak of one exercise: its heaviest load, and that as a share of its maximum. */
function peaks(full: FullPrescription) {
  const { unit, percent, oneRepMax, sets } = full;
  const loads = sets.flatMap(({ load }) => (load === undefined ? [] : [load]));
  const peak = loads.length > 0 ? Math.max(...loads) : undefined;
  const ofPeak: Working = { formula: 'w', symbols: { w: 'load' }, inputs: { load: peak ?? 0, unit } };
  const given = { formula: 'p', symbols: { p: 'percent' }, inputs: { percent: percent ?? 0 } };
  return {
    peakLoad: peak === undefined ? undefined : total('peak-load', peak, loadUnitCode(unit), ofPeak, 'practice'),
    peakPercent:
      percent !== undefined
        ? total('peak-percent', percent, '%', given, 'practice')
        : peak !== undefined && oneRepMax
          ? overMaximum('peak-percent', decimal(peak), '%', ofPeak, unit, oneRepMax)
          : undefined,
  };
}

/** The highest of the same total of several parts; nothing unless every part has it. */
function highest<K extends AnswerKind>(parts: readonly (Answer<K> | undefined)[]): Answer<K> | undefined {
  const there = parts.filter((part) => part !== undefined);
  if (there.length < parts.length) return undefined;
  const kilograms = ({ value, unit }: Answer): number => (unit === '[lb_av]' ? convertLoad(value, 'lb', 'kg') : value);
  return there.reduce<Answer<K> | undefined>(
    (most, part) => (most && kilograms(most) >= kilograms(part) ? most : part),
    undefined,
  );
}

function exerciseCautions({ full, limbs }: ExerciseLayout): Caution[] {
  const { mode, occlusionMmHg, sets } = full;
  const cautions: Caution[] = [];
  const limit = EXERCISE_LIMIT_S[mode];
  const times = limbs.map(({ stretches }) => {
    const { full: whole, partial, longest } = tally(stretches);
    return (mode === 'passive' ? longest : plus([...whole, ...partial])).toNumber();
  });
  const most = Math.max(...times);
  if (most > limit) {
    const values = { minutes: format(most / MINUTE) };
    cautions.push(caution('caution', EXERCISE_CAUTION[mode], values, { source: 'guideline-review-2019' }));
  }
  for (const { place, stretches } of limbs) {
    const pressure = Math.max(0, ...stretches.map(({ pressureMmHg }) => pressureMmHg ?? 0));
    const occlusion = occlusionMmHg === undefined ? Infinity : onSide(occlusionMmHg, place.side);
    if (pressure > occlusion) {
      const values = { pressure: format(pressure), occlusion: format(occlusion) };
      cautions.push(caution('caution', 'pressure-above-occlusion', values));
    }
  }
  if (sets.some(({ repetitions, load }) => repetitions === undefined && load !== undefined)) {
    cautions.push(caution('note', 'timed-sets-no-volume'));
  }
  return cautions;
}

const isTense = ({ mode }: FullPrescription): boolean => mode === 'resistance';

/** What one exercise adds up to, cautions on the whole limb apart. */
function exerciseTotals(laid: ExerciseLayout): ExerciseTotals {
  const { full, bouts, rests, limbs, startS, endS } = laid;
  const working = bouts.filter(({ warmUp }) => !warmUp);
  const tense = isTense(full) ? working : [];
  const lead = [...bouts, ...rests].filter(({ warmUp }) => warmUp).map(({ durationS }) => durationS);
  const between = rests.filter(({ warmUp }) => !warmUp).map(({ durationS }) => durationS);
  const repetitions = repetitionsOf(working);
  const pressures = limbs.map(({ place, stretches }) => pressureTotals(full, place, stretches));
  const pressureTime = summed(
    pressures.map((part) => part.pressureTime),
    'limbs',
  );
  const relativePressureTime = summed(
    pressures.map((part) => part.relativePressureTime),
    'limbs',
  );
  const clock = added(
    lead.length > 0 && listed('warm', 'warmUp', seconds(lead)),
    full.inflatedBeforeS > 0 && listed('before', 'inflatedBeforeS', format(full.inflatedBeforeS)),
    workWorking(full, working),
    between.length > 0 && listed('rest', 'rests', seconds(between)),
    full.deflatedAfterS > 0 && listed('after', 'deflatedAfterS', format(full.deflatedAfterS)),
  );
  const { longestRestriction, restrictionTime, partialRestrictionTime, reperfusionTime } = exerciseRestriction(laid);
  return {
    repetitions: total(
      'repetitions',
      sum(repetitions),
      '{reps}',
      listed('R', 'repetitionsPerSet', list(repetitions)),
      'practice',
    ),
    ...volumeTotals(full, working),
    timeUnderTension: total(
      'time-under-tension',
      plus(tense.map(({ durationS }) => durationS)).toNumber(),
      's',
      workWorking(full, tense),
      'published',
      'volume-methods-2009',
    ),
    restrictionTime,
    ...(partialRestrictionTime && { partialRestrictionTime }),
    longestRestriction,
    ...(reperfusionTime && { reperfusionTime }),
    ...(pressureTime && { pressureTime }),
    ...(relativePressureTime && { relativePressureTime }),
    sessionTime: total('session-time', endS.minus(startS).toNumber(), 's', clock, 'derived', 'knee-repair-2022'),
    cautions: exerciseCautions(laid),
  };
}

/** What one exercise adds up to, as a session of its own on the limb. */
export function addUp(full: FullPrescription): ExerciseTotals {
  const [laid] = layOutSession({ exercises: [full], pauses: [] });
  const { cautions, ...totals } = exerciseTotals(laid!);
  const long = limbsOf([laid!]).flatMap((limb) => limb.cautions);
  return { ...totals, cautions: once([...long, ...cautions]) };
}

const once = (cautions: readonly Caution[]): Caution[] => [
  ...new Map(cautions.map((one) => [`${one.text} ${String(one.path)}`, one])).values(),
];

function limbsOf(laid: readonly ExerciseLayout[]): LimbExposure[] {
  const cuffed = laid.filter(({ any }) => any.length > 0);
  const assumptions = cuffed.length > 1 && !cuffed[0]!.full.limb ? [assumption('one-limb-taken')] : [];
  return byLimb(laid).flatMap(({ place, stretches }): LimbExposure[] => {
    if (!place.limb && stretches.length === 0 && cuffed.length > 0) return [];
    const own = laid.flatMap(({ full, bouts, limbs }) => {
      const limb = limbs.find((one) => one.place.limb === place.limb && one.place.side === place.side);
      if (!limb || (!place.limb && cuffed.length > 0 && limb.stretches.length === 0)) return [];
      const done = bouts.filter(({ warmUp, side }) => !warmUp && (!takesTurns(full.side) || side === place.side));
      return [{ full, done, stretches: limb.stretches }];
    });
    const repetitions = own.flatMap(({ done }) => repetitionsOf(done));
    const tense = own.flatMap(({ full, done }) => (isTense(full) ? done.map(({ durationS }) => durationS) : []));
    const restricted = own.filter((part) => part.stretches.length > 0);
    const pressures = restricted.map(({ full, stretches: part }) => pressureTotals(full, place, part));
    const pressureTime = summed(
      pressures.map((part) => part.pressureTime),
      'exercises',
    );
    const relativePressureTime = summed(
      pressures.map((part) => part.relativePressureTime),
      'exercises',
    );
    const { restrictionTime, ...totals } = restrictionTotals(stretches);
    const upS = restrictionTime.value + (totals.partialRestrictionTime?.value ?? 0);
    const short = stretches.flatMap((stretch, index) => {
      const before = stretches[index - 1];
      const apart = before && before.exercise !== stretch.exercise ? stretch.fromS.minus(before.toS) : undefined;
      return apart?.lt(REPERFUSION_S) ? [apart.toNumber()] : [];
    });
    return [
      {
        ...place,
        exercises: restricted.length,
        repetitions: total(
          'repetitions',
          sum(repetitions),
          '{reps}',
          listed('R', 'repetitionsPerSet', list(repetitions)),
          'practice',
        ),
        timeUnderTension: total(
          'time-under-tension',
          plus(tense).toNumber(),
          's',
          listed('S', 'timedSets', seconds(tense)),
          'published',
          'volume-methods-2009',
        ),
        restrictionTime: { ...restrictionTime, assumptions },
        ...totals,
        ...(pressureTime && { pressureTime }),
        ...(relativePressureTime && { relativePressureTime }),
        cautions: [
          ...limbCautions(upS),
          ...(short.length > 0
            ? [caution('caution', 'reperfusion-short', { minutes: format(Math.min(...short) / MINUTE) })]
            : []),
        ],
      },
    ];
  });
}

/** Notes on totals that some exercises have and others lack. */
function leftOut(
  parts: readonly ExerciseTotals[],
  name: keyof ExerciseTotals,
  kind: AnswerKind,
  missing: string,
): Caution[] {
  const there = parts.filter((part) => part[name] !== undefined).length;
  return there > 0 && there < parts.length
    ? [caution('note', 'total-left-out', { total: kindWords[kind].name, missing })]
    : [];
}

function sessionLoadOf({ sessionRpe, sessionS }: FullSession, clockS: number): Answer<'session-load'> | undefined {
  if (sessionRpe === undefined) return undefined;
  const tookS = sessionS ?? clockS;
  return total(
    'session-load',
    decimal(sessionRpe).times(decimal(tookS)).div(MINUTE).toNumber(),
    '{AU}',
    { formula: 'RPE * T / 60', symbols: { RPE: 'sessionRpe', T: 'sessionS' }, inputs: { sessionRpe, sessionS: tookS } },
    'published',
    'session-rpe-2001',
    'athlete-dataset-2024',
  );
}

function accountFor(session: FullSession): SessionTotals {
  const laid = layOutSession(session);
  const parts = laid.map(exerciseTotals);
  const limbs = limbsOf(laid);
  const several = parts.length > 1;
  const [first] = parts;
  const lifting = laid.flatMap(({ full }, index) => {
    const totals = parts[index]!;
    return isTense(full) && totals.repetitions.value > 0 ? [{ totals, ...peaks(full) }] : [];
  });
  const lifted = lifting.map(({ totals }) => totals);
  const cuffed = parts.filter((_, index) => laid[index]!.any.length > 0);
  const clockS = laid.at(-1)!.endS.toNumber();
  const sessionLoad = sessionLoadOf(session, clockS);
  const peakLoad = highest(lifting.map((part) => part.peakLoad));
  const peakPercent = highest(lifting.map((part) => part.peakPercent));
  const ends = {
    ...(peakLoad && { peakLoad }),
    ...(peakPercent && { peakPercent }),
    ...(sessionLoad && { sessionLoad }),
    limbs,
    exercises: session.exercises.map(({ name }, index) => ({
      ...(name !== undefined && { name }),
      totals: parts[index]!,
    })),
  };
  if (!several) {
    const { cautions, ...totals } = first!;
    return { ...totals, ...ends, cautions: once([...limbs.flatMap((limb) => limb.cautions), ...cautions]) };
  }
  const whole = <
    N extends 'volumeLoad' | 'bodyMassVolumeLoad' | 'relativeVolumeLoad' | 'pressureTime' | 'relativePressureTime',
  >(
    name: N,
    among: readonly ExerciseTotals[],
  ) => {
    const answer = summed<AnswerKind>(
      among.map((part) => part[name]),
      'exercises',
    );
    return answer && ({ [name]: answer } as unknown as Pick<ExerciseTotals, N>);
  };
  const { restrictionTime: _, ...restricted } = restrictionTotals(laid.flatMap(({ any }) => any));
  const clock = added(
    listed('E', 'exercises', list(parts.map(({ sessionTime }) => sessionTime.value))),
    listed('p', 'pauses', list(session.pauses)),
  );
  const lighter = lifted.filter((part) => part.bodyMassVolumeLoad);
  return {
    repetitions: summed(
      parts.map((part) => part.repetitions),
      'exercises',
    )!,
    ...whole('volumeLoad', lifted),
    ...whole('bodyMassVolumeLoad', lighter),
    ...whole('relativeVolumeLoad', lifted),
    timeUnderTension: summed(
      parts.map((part) => part.timeUnderTension),
      'exercises',
    )!,
    restrictionTime: summed(
      parts.map((part) => part.restrictionTime),
      'exercises',
    )!,
    ...restricted,
    ...whole('pressureTime', cuffed),
    ...whole('relativePressureTime', cuffed),
    sessionTime: total('session-time', clockS, 's', clock, 'derived', 'knee-repair-2022'),
    ...ends,
    cautions: once([
      ...limbs.flatMap((limb) => limb.cautions),
      ...parts.flatMap(({ cautions }, index) => cautions.map((one) => ({ ...one, path: ['exercises', index] }))),
      ...leftOut(lifted, 'volumeLoad', 'volume-load', 'load'),
      ...leftOut(lifted, 'relativeVolumeLoad', 'relative-volume-load', 'percent or oneRepMax'),
      ...leftOut(cuffed, 'pressureTime', 'pressure-time', 'pressureMmHg'),
      ...leftOut(cuffed, 'relativePressureTime', 'relative-pressure-time', 'occlusionMmHg'),
    ]),
  };
}

/**
 * What a session adds up to, planned or as it was done (give the repetitions really done in `sets`).
 *
 * - Repetitions: Σ repetitions of the sets.
 * - Volume load [kg or lb]: repetitions × load (J Strength Cond Res 2009;23(1):106–110). A body-weight
 *   exercise has a volume load of 0 unless the share of body mass is given as the load.
 * - Time under tension [s]: repetitions × (eccentric + bottom + concentric + top).
 * - Restriction time [s]: with continuous restriction from the first repetition to the end of the last set, rests
 *   included; with intermittent restriction the sets only.
 * - Longest unbroken restriction [s]; session time [s].
 *
 * Sums are exact, in decimals, so they have no interval. More than 10 minutes of restriction in the exercise, or
 * 20 on the limb, brings a caution.
 *
 * @param prescription - `scheme` or `sets`; `tempo` [s]; `restS` [s]; restriction; `load` [`unit`]
 * @returns each total as an answer with its working.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { accountSession } from 'cuffwork';
 * const totals = accountSession({
 *   scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous', load: 30,
 * });
 * totals.volumeLoad?.value; // => 2250
 * totals.restrictionTime.value; // => 390
 * ```
 */
export function accountSession(session: SessionInput): SessionTotals {
  return accountFor(fullSession(session));
}
