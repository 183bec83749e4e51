import type { Answer, Caution } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { describe, refuse, type Path } from '../answer/issues.js';
import type { MessageValues } from '../answer/messages.js';
import { isPart, type Part } from '../answer/part.js';
import { textByCode, type TextByCode } from './catalogue.js';
import { isAnswer, isNear } from './consistency.js';
import type { ExpandedRecord, ExpandedRecordItem, RecordItem, SessionRecord } from './record.js';
import type { Disclaimer, DisclaimerCode } from './disclaimers.js';
import { kindOfTotal, type AnswerPointer, type DocumentAnswer, type Stated, type StatedAnswer } from './stated.js';
import type { ExpandedLimbTotals, ExpandedPlan, ExpandedPlanItem, Plan, PlanItem } from './types.js';
import { POINTER } from './needs.js';

/** Answers of an item that are stated in it and whole among the answers of its document. */
const OF_ITEM = ['target', 'restTarget', 'load', 'upperLoad'] as const;

const numberOf = ({ value, unit, lower, upper }: Stated): Stated => defined({ value, unit, lower, upper }) as Stated;

const listOf = (parts: unknown, of: (part: Part) => unknown): unknown =>
  Array.isArray(parts) ? parts.map((part: unknown) => (isPart(part) ? of(part) : part)) : parts;

/** A sentence by its code; a remark of your own equation, which no catalogue has, keeps its words. */
const withoutText =
  (textOf: TextByCode) =>
  ({ text, ...message }: Part): Part => {
    const { code, values } = message;
    const isKnown =
      typeof code === 'string' &&
      textOf(code, isPart(values) ? (values as MessageValues) : {}, text as string) !== undefined;
    return isKnown ? message : { text, ...message };
  };

const withText = (messages: DocumentAnswer['cautions']): Caution[] =>
  messages.map(({ text, ...message }) => {
    const known = textByCode(message.code, message.values) ?? text ?? textByCode('code-unknown')!;
    const { severity, code, ...more } = message;
    return { severity, code, text: known, ...more };
  });

/** Whether two parts of plain JSON hold the same. */
function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const names = Object.keys(a);
  return (
    Array.isArray(a) === Array.isArray(b) &&
    names.length === Object.keys(b).length &&
    names.every((name) => Object.hasOwn(b, name) && isSame((a as Part)[name], (b as Part)[name]))
  );
}

/** The answers of a document, each once: the same one is known at once, an equal one is looked for. */
class Answers {
  readonly all: DocumentAnswer[] = [];
  readonly #places = new Map<Answer, AnswerPointer>();
  readonly #short: (message: Part) => Part;

  constructor(textOf: TextByCode) {
    this.#short = withoutText(textOf);
  }

  at(answer: Answer): AnswerPointer {
    const known = this.#places.get(answer);
    if (known) return known;
    const cautions = listOf(answer.cautions, this.#short);
    const own = { ...answer, inputs: this.#inputs(answer.inputs), cautions } as DocumentAnswer;
    const equal = this.all.findIndex((other) => other.value === own.value && isSame(other, own));
    const place = { ref: `/answers/${equal < 0 ? this.all.push(own) - 1 : equal}` };
    this.#places.set(answer, place);
    return place;
  }

  #inputs(inputs: unknown): unknown {
    if (Array.isArray(inputs)) return inputs.map((part) => this.#inputs(part));
    if (!isPart(inputs)) return inputs;
    if (isAnswer(inputs)) return this.at(inputs);
    // By name, and not as they come: a database may sort fields.
    for (const name of Object.keys(inputs).sort()) if (isAnswer(inputs[name])) this.at(inputs[name]);
    return Object.fromEntries(Object.entries(inputs).map(([name, part]) => [name, this.#inputs(part)]));
  }
}

/** Totals as the numbers that they are: their cautions are those of the document. */
function statedTotals(totals: object): object {
  const stated: Part = {};
  for (const [name, part] of Object.entries(totals as Part)) {
    if (name !== 'cautions') stated[name] = isAnswer(part) ? numberOf(part) : part;
  }
  return stated;
}

/** An item with the numbers of its answers. */
function compactItem(item: Part, answers: Answers): Part {
  // The answers that its others were worked out from are among the answers of the document.
  const { occlusion: _, oneRepMax: __, totals, ...parts } = item;
  const stated = OF_ITEM.flatMap((name) => {
    const answer = item[name];
    return isAnswer(answer) ? [[name, { ...numberOf(answer), ...answers.at(answer) }]] : [];
  });
  return {
    ...parts,
    ...(Object.fromEntries(stated) as Part),
    ...(totals !== undefined && { totals: isPart(totals) ? statedTotals(totals) : totals }),
  };
}

/**
 * A plan or a record with each answer once. What is no such document stays as it is: an older version is checked once
 * it has the shape of this one.
 */
function compacted(whole: object, textOf: TextByCode): Part {
  const answers = new Answers(textOf);
  const { document, schemaVersion, libraryVersion, ...parts } = whole as Part;
  const { items, limbs, session, sessionLoad, disclaimers, stopCriteria } = parts;
  const totals = isPart(session) && isPart(session['totals']) && { totals: statedTotals(session['totals']) };
  const stated = {
    items: listOf(items, (item) => compactItem(item, answers)),
    limbs: listOf(limbs, statedTotals),
    session: totals ? { ...(session as Part), ...totals } : session,
    sessionLoad: isAnswer(sessionLoad) ? numberOf(sessionLoad) : sessionLoad,
    disclaimers: listOf(disclaimers, withoutText(textOf)),
    stopCriteria: listOf(stopCriteria, withoutText(textOf)),
  };
  const equations = [...new Set(answers.all.map(({ equation }) => equation))];
  return { document, schemaVersion, libraryVersion, equations, ...parts, ...defined(stated), answers: answers.all };
}

/** The whole answer that a pointer of a document leads to. */
function follower(answers: readonly DocumentAnswer[]) {
  const whole = new Map<string, Answer>();
  const follow = (ref: string, before: number, path: Path): Answer => {
    const index = Number(/^\/answers\/(\d+)$/.exec(ref)?.[1] ?? NaN);
    const answer = index < before ? answers[index] : undefined;
    // An answer was worked out from answers before it, so no way leads round in a circle.
    if (!answer) refuse('changed-document', path, POINTER, describe(ref));
    const known = whole.get(ref);
    if (known) return known;
    const place = ['answers', index, 'inputs'];
    const inputs = Object.entries(answer.inputs).map(([name, part]) => [name, inside(part, index, [...place, name])]);
    const made = { ...answer, inputs: Object.fromEntries(inputs), cautions: withText(answer.cautions) } as Answer;
    whole.set(ref, made);
    return made;
  };
  const inside = (part: unknown, before: number, path: Path): unknown => {
    if (Array.isArray(part)) return part.map((one, index) => inside(one, before, [...path, index]));
    return isPart(part) && typeof part['ref'] === 'string' ? follow(part['ref'], before, [...path, 'ref']) : part;
  };
  return (at: StatedAnswer | undefined, path: Path): Answer | undefined =>
    at && follow(at.ref, answers.length, [...path, 'ref']);
}

const isStated = (part: unknown): part is Stated =>
  isPart(part) && typeof part['value'] === 'number' && typeof part['unit'] === 'string';

/**
 * Totals as answers: those that this version works out, where they are the numbers of the document; else the numbers
 * without their working, which the document does not have.
 */
function answersOf<T extends object>(stated: object, made: T | undefined): T {
  const own = made as Record<string, Answer> | undefined;
  // Fields that the library does not know are never looked at.
  const known = Object.entries(stated as Record<string, Stated>).filter(([, number]) => isStated(number));
  const numbers = known.map(([name, number]): [string, Answer] => {
    const again = own?.[name];
    if (again && again.unit === number.unit && isNear(again.value, number.value)) return [name, again];
    const kind = kindOfTotal(name);
    const level = number.lower === undefined ? {} : { level: 0.95 as const };
    const evidence = again?.evidence ?? 'practice';
    const bare = { kind, ...number, ...level, equation: kind, evidence, inputs: {}, assumptions: [], cautions: [] };
    return [name, bare];
  });
  return { ...Object.fromEntries(numbers), cautions: own?.['cautions'] ?? [] } as T;
}

/** Items with whole answers; `made` again for the working of their totals. */
function expandedItems<I extends PlanItem | RecordItem>(
  { items, answers }: { readonly items: readonly I[]; readonly answers: readonly DocumentAnswer[] },
  made: readonly Pick<ExpandedPlanItem, 'totals'>[] = [],
): object[] {
  const follow = follower(answers);
  return items.map((item, index) => {
    const whole = OF_ITEM.map((name) => [name, follow(item[name], ['items', index, name])]);
    return { ...item, ...defined(Object.fromEntries(whole)), totals: answersOf(item.totals, made[index]?.totals) };
  });
}

const expandedLimbs = (limbs: Plan['limbs'], made: readonly ExpandedLimbTotals[]): ExpandedLimbTotals[] =>
  limbs.map(({ limb, side, exercises, ...totals }, index) => {
    const place = { limb, side, exercises };
    return { ...place, ...answersOf<Omit<ExpandedLimbTotals, keyof typeof place>>(totals, made[index]) };
  });

/** A document of an older version with each answer once. */
export const compactedOlder = (document: object): Part => compacted(document, textByCode);

const sentences = (codes: readonly DisclaimerCode[]): Disclaimer[] =>
  codes.map((one) => ({ ...one, text: textByCode(one.code) ?? textByCode('code-unknown')! }));

/** A plan with whole answers; `made` again from its request, for the working of its totals. */
export function expandedPlan(plan: Plan, made: ExpandedPlan): ExpandedPlan {
  const { answers: _, equations: __, limbs, session, disclaimers, stopCriteria, ...rest } = plan;
  const items = expandedItems(plan, made.items) as ExpandedPlanItem[];
  return {
    ...rest,
    items: items.map((item) => {
      const behind = { occlusion: item.target?.inputs.occlusion, oneRepMax: item.load?.inputs.oneRepMax };
      return { ...item, ...defined(behind) };
    }),
    limbs: expandedLimbs(limbs, made.limbs),
    session: { ...session, totals: answersOf(session.totals, made.session.totals) },
    disclaimers: sentences(disclaimers),
    stopCriteria: sentences(stopCriteria),
  };
}

/** Items of a record with the whole answers that were planned, before what was done is added up. */
export const plannedOf = (record: SessionRecord) => expandedItems(record) as Omit<ExpandedRecordItem, 'totals'>[];

/** A record with whole answers; `made` again from what was done, for the working of its totals. */
export function expandedRecord(record: SessionRecord, made: ExpandedRecord): ExpandedRecord {
  const { answers: _, equations: __, limbs, disclaimers, sessionLoad, ...rest } = record;
  return {
    ...rest,
    items: expandedItems(record, made.items) as ExpandedRecordItem[],
    limbs: expandedLimbs(limbs, made.limbs),
    ...(sessionLoad &&
      made.sessionLoad && { sessionLoad: { ...made.sessionLoad, ...sessionLoad } as Answer<'session-load'> }),
    disclaimers: sentences(disclaimers),
  };
}

const expansions = new WeakMap<object, object>();

/** A document to hand out of what was worked out with whole answers, which are kept for it. */
export function compact<T extends Plan | SessionRecord>(expanded: Expansion<T>, textOf: TextByCode): T {
  const document = compacted(expanded, textOf) as unknown as T;
  expansions.set(document, expanded);
  return document;
}

/** What a document that the library made was made of. */
export const expansionOf = <T extends object>(document: T): Expansion<T> | undefined =>
  expansions.get(document) as Expansion<T> | undefined;

type Expansion<T> = T extends Plan ? ExpandedPlan : T extends SessionRecord ? ExpandedRecord : never;
