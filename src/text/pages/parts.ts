import type { Answer, Caution } from '../../answer/answer.js';
import { amount, numeral, ownAmount, sentence } from '../../answer/translate.js';
import { byAudience } from '../../plan/audience.js';
import type { Disclaimer } from '../../plan/disclaimers.js';
import { documentMessages } from '../../plan/document-messages.js';
import { placeWords, sideWords } from '../../plan/measures.js';
import type { ExpandedItem, ExpandedRecord } from '../../plan/record.js';
import { questionMessages } from '../../plan/screening-messages.js';
import { perSet } from '../../plan/set-counts.js';
import { messageKey } from '../../plan/severity.js';
import { inForce, type Stop } from '../../plan/stops.js';
import type { ExpandedLimbTotals, PlanSet } from '../../plan/types.js';
import { convertLoad } from '../../quantity/convert.js';
import { clock, format } from '../../quantity/format.js';
import { loadUnitCode, loadUnitOf, type LoadUnit, type Unit } from '../../quantity/quantities.js';
import { inSystem } from '../../quantity/unit-system.js';
import { isCuffed } from '../../session/prescription.js';
import type { ExerciseTotals } from '../../session/totals.js';
import { joined, lines, namedPart, part, present, type Block, type Field } from '../blocks.js';
import { idsIn } from '../cite.js';
import { cautionLine, sourceLines } from '../section.js';
import type { TextCode } from '../texts.js';
import { textIfKnown, type Translator } from '../translator.js';

/** How much of a page: all of it, what to do and what to watch for, or a sentence for each exercise of a plan. */
export type Detail = 'full' | 'brief' | 'sentence';

/** Sentences for everyone, below the numbers; all else that every document says is above them. */
const ALWAYS = [
  'screen-first',
  'supervise-first-sessions',
  'reperfuse-between-exercises',
  'side-effects-usual',
  'burn-usual',
  'watch-afterwards',
];
/** What is usual, so that an ordinary set does not look like a reason to stop: next to the stop criteria. */
export const USUAL = 'burn-usual';

/** Sentences of every page; in brief what to watch for after the session. */
export function always(
  translate: Translator,
  { disclaimers, cautions }: Pick<ExpandedRecord, 'disclaimers' | 'cautions'>,
  detail: Detail = 'full',
): string[] {
  // To whom is new to it, a caution says the same.
  const isSaid = cautions.some(({ code }) => code === 'first-session');
  return disclaimers
    .filter(({ code }) => (detail === 'brief' ? code === 'watch-afterwards' : ALWAYS.includes(code) && code !== USUAL))
    .filter(({ code }) => !(isSaid && code === 'supervise-first-sessions'))
    .map((printed) => sentence(translate, printed));
}

/** What of a document is at the top of its page. */
interface Headed {
  readonly stops: readonly Stop[];
  readonly disclaimers: readonly Disclaimer[];
}

/** The top of a page: its title, the stops before anything else, whose it is, what every document says. */
export const opening = (
  translate: Translator,
  title: TextCode,
  { stops, disclaimers }: Headed,
  above: readonly (string | false)[] = [],
  below: readonly string[] = [],
): Block[] => [
  { heading: translate(title), level: 1 },
  ...stopBlocks(translate, stops, title === 'page.record' ? 'page.no-settings-record' : 'page.no-settings'),
  lines(
    ...above,
    ...disclaimers.filter(({ code }) => !ALWAYS.includes(code)).map((printed) => sentence(translate, printed)),
    ...below,
  ),
];

export const isStopped = ({ stops }: Pick<Headed, 'stops'>): boolean => inForce(stops).length > 0;

/** Stops in force, then those that a practitioner lifted. */
function stopBlocks(
  translate: Translator,
  stops: readonly Stop[],
  noSettings: 'page.no-settings' | 'page.no-settings-record',
): Block[] {
  const lifted = stops.flatMap((stop) => {
    if (!stop.lifted) return [];
    const { by, on, why } = stop.lifted;
    return [
      translate('page.lifted-by', {
        stop: stopName(translate, stop),
        role: translate(`page.role-${by}`),
        date: on,
        why,
      }),
    ];
  });
  const points = stopLines(translate, stops);
  return [
    ...(points.length > 0
      ? namedPart('do-not-train', part(translate('page.do-not-train'), { points }, lines(translate(noSettings))))
      : []),
    ...part(translate('page.lifted'), { points: lifted }),
  ];
}

/** What the stops in force say, each sentence once, with the days since when. */
export function stopLines(translate: Translator, stops: readonly Stop[]): string[] {
  const days = new Map<string, string[]>();
  for (const stop of inForce(stops)) {
    const text = sentence(translate, stop);
    days.set(text, [...(days.get(text) ?? []), ...present(stop.since)]);
  }
  return [...days].map(([text, since]) =>
    since.length === 0 ? text : translate('page.dated', { text, date: since.join(', ') }),
  );
}

/** What a stop is about, without what it asks for: its symptom, its question, or its figure. */
function stopName(translate: Translator, { code, about = '', text, values = {} }: Stop): string {
  if (Object.hasOwn(documentMessages, about)) return translate(about as keyof typeof documentMessages, values);
  const question = `ask-${code}`;
  return Object.hasOwn(questionMessages, question)
    ? translate('page.answered-yes', { question: translate(question as keyof typeof questionMessages, values) })
    : (textIfKnown(translate, `stop.${code}`, values) ?? sentence(translate, { code, text, values }));
}

/** Cautions that are no stop of the document, by whom they are for. */
export const cautionsLeft = ({ cautions, stops }: Pick<ExpandedRecord, 'cautions' | 'stops'>) =>
  byAudience(cautions.filter(({ code }) => !stops.some((stop) => stop.code === code)));

/** Cautions that are no stop of the document, by whom they are for; remarks on the method last. */
export function watchParts(
  translate: Translator,
  document: Pick<ExpandedRecord, 'cautions' | 'stops'>,
  between: readonly Block[] = [],
  more: readonly string[] = [],
  line = (printed: Caution): string => cautionLine(translate, printed),
): Block[] {
  const { person, practitioner, method } = cautionsLeft(document);
  const points = (own: typeof method): string[] => own.map(line);
  return [
    ...part(translate('page.watch'), { points: points(person) }),
    ...part(translate('page.practitioner'), { points: points(practitioner) }),
    ...between,
    ...part(translate('page.method'), { points: [...points(method), ...more] }),
  ];
}

export const sourcesPart = (translate: Translator, document: object): Block[] =>
  part(translate('page.sources'), { points: sourceLines(idsIn(document)) });

const withPlaces = (line: string, places: readonly string[]): string =>
  places.length > 0 ? `${line} (${[...new Set(places)].join('; ')})` : line;

/** A line with the items that it is about, where it is not all of them; an exercise that it is about on each limb once. */
export const ofItems = <I extends Pick<ExpandedItem, 'exercise' | 'limb' | 'side'>>(
  translate: Translator,
  line: string,
  own: readonly I[],
  all: readonly I[],
): string =>
  withPlaces(
    line,
    own.length === all.length
      ? []
      : own.map((item) =>
          all.every((other) => other.exercise !== item.exercise || own.includes(other))
            ? item.exercise
            : placeWords(translate, item),
        ),
  );

/** What a caution can be about: exercises on limbs, and what they add up to on each limb. */
interface Places<I> {
  readonly items: readonly I[];
  readonly limbs: readonly ExpandedLimbTotals[];
}

/** A caution as a line with the exercises or limbs it is about, where it is not all of them. */
export function placedLine<I extends Pick<ExpandedItem, 'exercise' | 'limb' | 'side' | 'restriction' | 'target'>>(
  translate: Translator,
  { items, limbs }: Places<I>,
  cautionsOf: (item: I) => readonly Caution[],
): (printed: Caution) => string {
  return (printed) => {
    const key = messageKey(printed);
    const isIn = (own: readonly Caution[] = []): boolean => own.some((other) => messageKey(other) === key);
    const whose = items.filter((item) => isIn(cautionsOf(item)));
    const ofCuff = whose.every(({ target }) => isIn(target?.cautions));
    const all = ofCuff ? items.filter(isCuffed) : items;
    const line = cautionLine(translate, printed);
    if (whose.length > 0) return ofItems(translate, line, whose, all);
    const ofLimbs = limbs.filter(({ cautions }) => isIn(cautions));
    return withPlaces(
      line,
      ofLimbs.length < limbs.length ? ofLimbs.map(({ side, limb }) => sideWords(translate, side, limb)) : [],
    );
  };
}

/** An answer as its number with its unit. */
export const answerAmount = (translate: Translator, { value, unit }: Answer): string => amount(translate, value, unit);

/** A pressure that is set or held, as it is. */
export const pressure = (translate: Translator, mmHg: number): string => ownAmount(translate, mmHg, 'mm[Hg]');

/** Totals that there is a working of: timed sets have no repetitions, and no cuff has no time. */
export const notZero = (totals: readonly Answer[]): Answer[] => totals.filter(({ value }) => value !== 0);

export const totalTime = (translate: Translator, { timeUnderTension: tension, sessionTime }: ExerciseTotals): string =>
  joined(
    tension.value > 0 && translate('page.total-tension', { tension: clock(tension.value) }),
    translate('page.total-time', { session: clock(sessionTime.value) }),
  );

/** Time at the lower pressure of the rests, where there is one. */
const partialTime = (translate: Translator, time: Answer | undefined): string | undefined =>
  time && translate('page.total-partial', { partial: clock(time.value) });

const volumeWords = (translate: Translator, volume: Answer | undefined): string | false | undefined =>
  volume && volume.value > 0 && translate('page.limb-volume', { volume: answerAmount(translate, volume) });

/** The work that was or is to be done, where sets are counted. */
function workLines(translate: Translator, totals: ExerciseTotals): string[] {
  const { repetitions: count, volumeLoad, bodyMassVolumeLoad } = totals;
  if (count.value === 0) return [];
  return present(
    joined(
      translate('page.total-repetitions', { repetitions: format(count.value) }),
      volumeWords(translate, volumeLoad),
    ),
    bodyMassVolumeLoad && translate('page.total-body-volume', { volume: answerAmount(translate, bodyMassVolumeLoad) }),
  );
}

/** What an exercise on one limb or a session of several adds up to. */
export function totalLines(translate: Translator, totals: ExerciseTotals, cuffedLimbs = 1): string[] {
  const { restrictionTime, longestRestriction, reperfusionTime, pressureTime, relativePressureTime } = totals;
  return present(
    ...workLines(translate, totals),
    totalTime(translate, totals),
    longestRestriction.value > 0 &&
      translate(cuffedLimbs > 1 ? 'page.total-restriction-limbs' : 'page.total-restriction', {
        restriction: clock(restrictionTime.value),
        longest: clock(longestRestriction.value),
      }),
    partialTime(translate, totals.partialRestrictionTime),
    reperfusionTime && translate('page.total-reperfusion', { reperfusion: clock(reperfusionTime.value) }),
    relativePressureTime &&
      translate(cuffedLimbs > 1 ? 'page.total-pressures-limbs' : 'page.total-pressures', {
        limbs: cuffedLimbs,
        pressure: answerAmount(translate, pressureTime!),
        relative: answerAmount(translate, relativePressureTime),
      }),
  );
}

/** What each limb goes through in a session. */
export const limbLines = (translate: Translator, limbs: readonly ExpandedLimbTotals[]): string[] =>
  limbs.map(({ limb, side, exercises, restrictionTime, partialRestrictionTime, volumeLoad }) => {
    const values = { side: sideWords(translate, side, limb), restriction: clock(restrictionTime.value), exercises };
    return joined(
      translate(`page.limb-${exercises === 0 ? 'none' : exercises === 1 ? 'one' : 'many'}`, values),
      partialTime(translate, partialRestrictionTime),
      volumeWords(translate, volumeLoad),
    );
  });

/** What each set has of its own: load, repetitions in reserve, effort. */
export function setFields(translate: Translator, sets: readonly PlanSet[], own: LoadUnit): Field[] {
  const write = (value: number): string => numeral(translate, value);
  const code = loadUnitCode(own);
  // In the unit that you ask for, and in the one that is set.
  const units = [...new Set([inSystem(0, code, translate.units).unit as Unit, code])];
  const found: (readonly [string, string | undefined])[] = [
    ...units.map((unit): [string, string | undefined] => [
      translate('page.set-loads', { unit: loadUnitOf(unit) }),
      perSet(sets, ({ load }) => load && convertLoad(load, own, loadUnitOf(unit)), write),
    ]),
    [translate('page.set-reserve'), perSet(sets, ({ repetitionsInReserve }) => repetitionsInReserve, write)],
    [translate('page.set-effort'), perSet(sets, ({ reserveRpe }) => reserveRpe, write)],
  ];
  return found.filter((field): field is Field => field[1] !== undefined);
}

export const bloodPressure = (
  translate: Translator,
  code: 'page.blood-pressure' | 'page.blood-pressure-day',
  systolicMmHg: number,
  diastolicMmHg: number,
): string => translate(code, { systolic: format(systolicMmHg), diastolic: format(diastolicMmHg) });
