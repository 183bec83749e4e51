import { frozen } from '../quantity/frozen.js';
import type { Sentence } from '../answer/answer.js';
import { sentencesOf } from '../answer/sentences.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { stageMessages } from './document-messages.js';

const sentence = sentencesOf(stageMessages);

/** A stage of the progression from rehabilitation to performance. */
export interface Stage {
  /** Name to ask for the stage by. */
  readonly id: 'passive' | 'aerobic' | 'low-load' | 'low-and-high-load' | 'high-load';
  /** Name to print. */
  readonly name: string;
  /** Evidence grade of this stage in the progression. */
  readonly evidence: Grade;
  /** The published text that names the stage. */
  readonly source?: SourceId;
}

const published = { evidence: 'published', source: 'clinical-stages-2021' } as const;

/**
 * The progression from rehabilitation to performance, lowest stage first.
 *
 * @example
 * ```ts
 * import { progression } from 'cuffwork/plan';
 * progression[0]?.id; // => 'passive'
 * ```
 */
export const progression: readonly Stage[] = frozen([
  { id: 'passive', name: 'restriction at rest', ...published },
  { id: 'aerobic', name: 'restriction with walking or cycling', ...published },
  { id: 'low-load', name: 'low load with restriction', ...published },
  { id: 'low-and-high-load', name: 'low load with restriction, together with ordinary high load', ...published },
  { id: 'high-load', name: 'high load alone', evidence: 'practice', source: 'clinical-stages-2021' },
]);

/** The place of a stage in the progression, and the next one in the published text. */
export interface StagePlace {
  /** The stage you asked about. */
  readonly stage: Stage;
  /** Number of the stage, from 1, the earliest. */
  readonly position: number;
  /** Number of stages in the progression. */
  readonly of: number;
  /** The stage after it; left out at the last. */
  readonly next?: Stage;
  /** Sentences to print: which stage follows, and that the practitioner decides. */
  readonly messages: readonly Sentence[];
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
 * @param input - `stage`: the id of the present stage.
 * @returns the next stage, if there is one, and sentences about it.
 * @throws InputError when there is no such stage.
 *
 * @example
 * ```ts
 * import { nextStage } from 'cuffwork/plan';
 * nextStage({ stage: 'aerobic' }).next?.id; // => 'low-load'
 * nextStage({ stage: 'high-load' }).next; // => undefined
 * ```
 */
export const nextStage = withInput(function nextStage(input: {
  /** Id of the present stage; see `progression`. */
  readonly stage: Stage['id'];
}): StagePlace {
  const reader = new Reader(input);
  const id = reader.choice(
    'stage',
    progression.map((stage) => stage.id),
  );
  reader.done();
  const index = progression.findIndex((stage) => stage.id === id);
  const stage = progression[index]!;
  const next = progression[index + 1];
  const message = next
    ? {
        ...sentence(next.evidence === 'published' ? 'stage-next' : 'stage-next-practice', {
          next: next.name,
          stage: stage.name,
        }),
        values: { next: next.id, stage: stage.id },
      }
    : sentence('stage-top');
  return {
    stage: { ...stage },
    position: index + 1,
    of: progression.length,
    ...(next && { next: { ...next } }),
    messages: [message, sentence('stage-not-permission')],
    sources: ['clinical-stages-2021'],
  };
});
