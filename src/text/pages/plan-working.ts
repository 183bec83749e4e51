import type { Answer } from '../../answer/answer.js';
import { timesOf } from '../../plan/limb-and-side.js';
import { sideWords } from '../../plan/measures.js';
import type { ExpandedPlan } from '../../plan/types.js';
import type { ExerciseTotals } from '../../session/totals.js';
import { present } from '../blocks.js';
import { workingOf } from '../section.js';
import type { Translator } from '../translator.js';
import type { Group } from '../write.js';
import { notZero, stopLines } from './parts.js';

/** The totals of an exercise or a session, by name. */
const sumsOf = ({ cautions: _, ...sums }: ExerciseTotals) =>
  (Object.entries(sums) as [keyof typeof sums, Answer][]).filter(([, sum]) => notZero([sum]).length > 0);

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * The working of every answer of a plan, in groups: of each limb its pressures, of each exercise what its limbs share,
 * then what is one limb’s own. Lines that are `above` are left out.
 */
export function planWorking(
  plan: ExpandedPlan,
  translate: Translator,
  above: readonly string[] = [],
): Required<Group>[] {
  const { items, session } = plan;
  const stops = stopLines(translate, plan.stops);
  if (stops.length > 0) {
    const lines = [translate('page.do-not-train'), ...stops, translate('page.no-settings')];
    return lines.map((group) => ({ group, sections: [] }));
  }
  const groups: Required<Group>[] = [];
  // What several answers rest on is printed once.
  const printed = new Set(above);
  const add = (group: string, answers: readonly (Answer | undefined)[]): void => {
    const sections = present(...answers).map((answer) => workingOf(answer, translate, printed));
    if (sections.length > 0) groups.push({ group, sections });
  };
  const times = timesOf(items);
  const titles = items.map(({ exercise }, index) => (times[index]! > 1 ? `${exercise} (${times[index]!})` : exercise));
  const shown = new Map<string, Answer>();
  items.forEach(({ side, limb, occlusion, target, restTarget, oneRepMax, load, upperLoad, totals }, index) => {
    const title = titles[index]!;
    const where = sideWords(translate, side, limb);
    const limbs = items.filter((_, at) => titles[at] === title);
    const isShared = ([name, answer]: ReturnType<typeof sumsOf>[number]): boolean =>
      limbs.every((other) => isSame(other.totals[name], answer));
    const sums = sumsOf(totals);
    if (target && !shown.has(where)) {
      shown.set(where, target);
      add(where, [occlusion, target]);
    }
    if (titles.indexOf(title) === index) {
      add(title, [oneRepMax, load, upperLoad, ...sums.filter(isShared).map(([, answer]) => answer)]);
    }
    const own = sums.filter((sum) => !isShared(sum)).map(([, answer]) => answer);
    add(`${title}, ${where}`, [isSame(shown.get(where), target) ? undefined : target, restTarget, ...own]);
  });
  if (items.length > 1) {
    const whole = sumsOf(session.totals).map(([, answer]) => answer);
    add(translate('page.session'), whole);
  }
  return groups;
}
