import { frozen } from '../quantity/frozen.js';
import type { Sentence } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { sentence } from './messages.js';

/** A stage of the progression from rehabilitation to performance. */
export interface Rung {
  /** Name to ask for the stage by. */
  readonly id: 'passive' | 'aerobic' | 'low-load' | 'low-and-high-load' | 'high-load';
  /** Name to print. */
  readonly name: string;
  /** Evidence grade of this stage in the progression. */
  readonly evidence: Grade;
  /** The published text that names the stage. */
  readonly source?: SourceId;
}

const published = { evidence: 'published', source: 'clinical-ladder-2021' } as const;

/**
 * The progression from rehabilitation to performance, lowest stage first.
 *
 * @example
 * ```ts
 * import { ladder } from 'cuffwork/plan';
 * ladder[0]?.id; // => 'passive'
 * ```
 */
export const ladder: readonly Rung[] = /* @__PURE__ */ frozen([
  { id: 'passive', name: 'restriction at rest', ...published },
  { id: 'aerobic', name: 'restriction with walking or cycling', ...published },
  { id: 'low-load', name: 'low load with restriction', ...published },
  { id: 'low-and-high-load', name: 'low load with restriction, together with ordinary high load', ...published },
  { id: 'high-load', name: 'high load alone', evidence: 'practice', source: 'clinical-ladder-2021' },
]);

/** The place of a stage in the progression, and the next one in the published text. */
export interface LadderPlace {
  /** The stage you asked about. */
  readonly rung: Rung;
  /** From 1, the lowest. */
  readonly position: number;
  /** Number of stages in the progression. */
  readonly of: number;
  /** Left out at the last stage. */
  readonly next?: Rung;
  /** Sentences to print: which stage follows, and that the practitioner decides. */
  readonly says: readonly Sentence[];
  /** Published texts of the order. */
  readonly sources: readonly SourceId[];
}

/**
 * The next stage in the progression from rehabilitation to performance, as the published text orders them:
 * at rest, with walking or cycling, with low load, with low load together with high load, then high load alone.
 *
 * It gives the order. The practitioner decides whether and when a person moves on.
 *
 * - Evidence: the first four stages `published` (Phys Ther 2021;101:1–9); high load alone as a stage `practice`, the
 *   text names it as the aim.
 *
 * @function
 * @param input - `rung`: the id of the present stage.
 * @returns the next stage, if there is one, and sentences about it.
 * @throws InputError when there is no such stage.
 *
 * @example
 * ```ts
 * import { nextRung } from 'cuffwork/plan';
 * nextRung({ rung: 'aerobic' }).next?.id; // => 'low-load'
 * nextRung({ rung: 'high-load' }).next; // => undefined
 * ```
 */
export const nextRung = /* @__PURE__ */ withInput(function nextRung(input: { readonly rung: Rung['id'] }): LadderPlace {
  const reader = new Reader(input);
  const id = reader.choice(
    'rung',
    ladder.map((rung) => rung.id),
  );
  reader.done();
  const index = ladder.findIndex((rung) => rung.id === id);
  const rung = ladder[index]!;
  const next = ladder[index + 1];
  const said = next
    ? sentence(next.evidence === 'published' ? 'ladder-next' : 'ladder-next-practice', {
        next: next.name,
        rung: rung.name,
      })
    : sentence('ladder-top');
  return {
    rung: { ...rung },
    position: index + 1,
    of: ladder.length,
    ...(next && { next: { ...next } }),
    says: [said, sentence('ladder-not-permission')],
    sources: ['clinical-ladder-2021'],
  };
});
