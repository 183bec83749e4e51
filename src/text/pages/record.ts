import type { Answer } from '../../answer/answer.js';
import { amountToSet, named, rangeToSet } from '../../answer/translate.js';
import { placeWords, sideWords } from '../../plan/measures.js';
import type { ProposalItem } from '../../plan/proposal.js';
import type { ExpandedRecord, ExpandedRecordItem } from '../../plan/record.js';
import { clock, format } from '../../quantity/format.js';
import { loadUnitCode } from '../../quantity/quantities.js';
import { fields, joined, lines, part, present, type Block } from '../blocks.js';
import { assumedLine, sumOf } from '../section.js';
import type { Translator } from '../translator.js';
import { setsBriefly } from './exercises.js';
import {
  always,
  answerAmount,
  bloodPressure,
  isStopped,
  limbLines,
  notZero,
  opening,
  placedLine,
  pressure,
  setFields,
  sourcesPart,
  totalLines,
  watchParts,
  type Detail,
} from './parts.js';

/** The heading of an item of a record or a proposal. */
export const itemHeading = (translate: Translator, item: ExpandedRecordItem | ProposalItem, index: number): Block => ({
  heading: translate('page.item', {
    number: index + 1,
    exercise: ('done' in item ? item.done.instead : undefined) ?? item.exercise,
    side: sideWords(translate, item.side, item.limb),
  }),
  level: 2,
});

/** What was done; with what was planned, unless a stop is in force. */
function doneFields(translate: Translator, item: ExpandedRecordItem, stopped: boolean): Block {
  const { mode, target, restTarget, load, upperLoad, sets, lastSetToFailure, restriction, done } = item;
  const onlyDone = (text: string): string => translate('page.only-done', { done: text });
  const withPlanned = (text: string, planned: string): string =>
    stopped ? onlyDone(text) : translate('page.done', { done: text, planned });
  const heldPressure = (mmHg: number | undefined, planned: Answer): string => {
    const held =
      mmHg === undefined
        ? translate('page.held-not-recorded')
        : translate('page.held', { pressure: pressure(translate, mmHg) });
    return stopped ? held : translate('page.held-and-planned', { held, planned: pressure(translate, planned.value) });
  };
  const liftedLoad = (planned: Answer<'training-load'>): string => {
    const lifted = amountToSet(translate, done.load!, loadUnitCode(done.unit!));
    // The planned load is that of another exercise.
    return done.instead === undefined
      ? withPlanned(lifted, rangeToSet(translate, planned, upperLoad))
      : onlyDone(lifted);
  };
  const counts = withPlanned(setsBriefly(translate, done.sets), setsBriefly(translate, sets));
  return fields(
    done.instead !== undefined && [translate('page.instead'), item.exercise],
    [translate('page.sets'), lastSetToFailure && !stopped ? translate('page.to-failure', { sets: counts }) : counts],
    (load !== undefined || mode === undefined || mode === 'resistance') && [
      translate('page.load'),
      load && !done.unloaded ? liftedLoad(load) : translate('page.no-load'),
    ],
    ...setFields(translate, done.sets, done.unit ?? 'kg'),
    done.occlusionMmHg !== undefined && [translate('page.measured-day'), pressure(translate, done.occlusionMmHg)],
    [
      translate('page.cuff'),
      restriction === 'none'
        ? translate('page.no-cuff')
        : [heldPressure(done.heldMmHg, target!), named(translate, 'value', restriction)].join('; '),
    ],
    restTarget && [translate('page.rests'), heldPressure(done.restHeldMmHg, restTarget)],
    done.reperfusedBeforeS !== undefined && [
      translate('page.before'),
      translate('page.cuff-down', { time: clock(done.reperfusedBeforeS) }),
    ],
  );
}

function doneBlocks(translate: Translator, item: ExpandedRecordItem, stopped: boolean): Block[] {
  const { done, totals } = item;
  return [
    doneFields(translate, item, stopped),
    lines(
      done.stoppedEarly && translate('page.stopped-early'),
      done.lastSetToFailure && translate('page.last-to-failure'),
    ),
    { under: translate('page.totals'), lines: totalLines(translate, totals) },
  ];
}

/** A rating from 0 to 10. */
const rating = (translate: Translator, value: number | undefined): string =>
  value === undefined ? translate('page.not-recorded') : `${format(value)}/10`;

/** Pain, a line a site. */
function painLines(translate: Translator, pain: ExpandedRecord['pain']): string[] {
  if (!pain) return [translate('page.pain-not-recorded')];
  if (pain.length === 0) return [translate('page.pain-none')];
  return pain.map(({ site, limb, side, before, during, after, nextMorning }) =>
    translate('page.pain', {
      place: joined(
        named(translate, 'value', site),
        ...(side && limb
          ? [sideWords(translate, side, limb)]
          : present(side, limb).map((code) => named(translate, 'value', code))),
      ),
      before: rating(translate, before),
      during: rating(translate, during),
      after: rating(translate, after),
      next: rating(translate, nextMorning),
    }),
  );
}

/** Pain, effort, symptoms and notes. */
function feltPart(translate: Translator, record: ExpandedRecord): Block[] {
  const { pain, sessionRpe, sessionS, sessionLoad, symptoms, notes } = record;
  const time =
    sessionS === undefined ? translate('page.not-recorded') : translate('page.time', { time: clock(sessionS) });
  return part(
    translate('page.felt'),
    lines(
      ...painLines(translate, pain),
      translate('page.effort', { effort: rating(translate, sessionRpe) }),
      joined(
        translate('page.took', { time }),
        sessionLoad && translate('page.session-load', { load: answerAmount(translate, sessionLoad) }),
      ),
      translate('page.symptoms', {
        symptoms: symptoms.map((code) => translate(code)).join('; ') || translate('page.none-recorded'),
      }),
      notes !== undefined && translate('page.notes', { notes }),
    ),
  );
}

/** A record as a page; in full with the working of its totals. */
export function recordBlocks(record: ExpandedRecord, translate: Translator, detail: Detail): Block[] {
  const { date, label, posture, systolicMmHg, diastolicMmHg, items, limbs, assumptions } = record;
  const full = detail === 'full';
  const stopped = isStopped(record);
  const line = placedLine(translate, record, ({ totals }) => totals.cautions);
  const assumed = assumptions.map((message) => assumedLine(translate, message));
  const afterwards = part(translate('page.afterwards'), { points: always(translate, record) });
  const working: Block[] = items.map(({ exercise, side, limb, totals: { cautions: _, ...sums } }) => ({
    group: placeWords(translate, { exercise, side, limb }),
    sections: notZero(Object.values(sums)).map((answer) => sumOf(answer, translate)),
  }));
  const load: Block[] = present(record.sessionLoad).map((answer) => ({ section: sumOf(answer, translate) }));
  return [
    ...opening(translate, 'page.record', record, [
      joined(date, label, named(translate, 'value', posture)),
      systolicMmHg !== undefined && bloodPressure(translate, 'page.blood-pressure-day', systolicMmHg, diastolicMmHg!),
    ]),
    ...items.flatMap((item, index) => [itemHeading(translate, item, index), ...doneBlocks(translate, item, stopped)]),
    ...feltPart(translate, record),
    ...part(translate('page.limbs'), lines(...limbLines(translate, limbs))),
    ...(stopped ? afterwards : watchParts(translate, record, afterwards, full ? assumed : [], line)),
    ...(full && !stopped ? part(translate('page.working'), ...working, ...load) : []),
    ...(full ? sourcesPart(translate, record) : []),
  ];
}
