import type { LoadUnit } from '../../src/index.js';
import {
  nextSession,
  planSession,
  recordSession,
  type Plan,
  type PlanExercise,
  type PlanExerciseFields,
  type PlanRequest,
  type ProgressionRequest,
  type DoneItem,
  type RecordRequest,
  type SessionRecord,
} from '../../src/plan/index.js';
import { CHAIN, measuredAt, PERSON } from './inputs.js';

type PlanLimbs = PlanRequest['limbs'];

/** A press with a load of its own and the cuff inflated throughout. */
export const press = {
  name: 'press',
  limb: 'leg',
  load: 20,
  ...CHAIN,
} as const;

/** A plan of one exercise on the left leg; the occlusion pressure is a measured 200 mmHg. */
export const planOf = (
  exercise: Partial<PlanExerciseFields> = {},
  request: Partial<PlanRequest> = {},
  limb: Partial<PlanLimbs[number]> = {},
): Plan =>
  planSession({
    ...PERSON,
    limbs: [
      {
        limb: 'leg',
        side: 'left',
        cuffWidthCm: 10,
        percentLop: 50,
        measured: measuredAt(200),
        ...limb,
      },
    ],
    exercises: [
      {
        name: 'leg extension',
        limb: 'leg',
        oneRepMax: { load: 100, unit: 'kg' satisfies LoadUnit },
        percentOneRepMax: 20,
        ...(!exercise.sets && { scheme: '30-15-15-15' }),
        tempo: { eccentricS: 2, concentricS: 2 },
        restS: 30,
        restriction: 'continuous',
        ...exercise,
      } as PlanExercise,
    ],
    ...request,
  });

/** Pain in a joint, as a record has it. */
export const jointPain = (before?: number, during?: number, after?: number, nextMorning?: number) => ({
  pain: [
    {
      site: 'joint' as const,
      ...(before !== undefined && { before }),
      ...(during !== undefined && { during }),
      ...(after !== undefined && { after }),
      ...(nextMorning !== undefined && { nextMorning }),
    },
  ],
});

/** A record of a plan’s first item, with the cuff held as planned. */
export const recordOf = (
  plan: Plan,
  repetitions: readonly number[],
  request: Partial<RecordRequest> = {},
  item: Partial<DoneItem> = {},
) => {
  const { exercise, limb, side, target } = plan.items[0]!;
  const held = target && { heldMmHg: target.value };
  const sets = repetitions.map((count) => ({ repetitions: count }));
  return recordSession({
    plan,
    date: '2026-03-02',
    items: [{ exercise, limb, side, sets, ...held, ...item }],
    ...request,
  });
};

/** Proposals from records of a plan, and their first item. */
export function proposing(plan: Plan) {
  const propose = (records: readonly SessionRecord[], more: Partial<ProgressionRequest> = {}) =>
    nextSession({ plan, records, rule: 'all-repetitions', ...more });
  const first = (...given: Parameters<typeof propose>) => propose(...given).items[0]!;
  return { propose, first };
}
