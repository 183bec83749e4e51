import { amountToSet, bareAmount, named, sentence } from '../../answer/translate.js';
import type { Proposal, ProposalItem } from '../../plan/proposal.js';
import { messageKey } from '../../plan/severity.js';
import { format } from '../../quantity/format.js';
import { loadUnitCode } from '../../quantity/quantities.js';
import { fields, lines, part, pointsOr, type Block } from '../blocks.js';
import type { Translator } from '../translator.js';
import { setsBriefly } from './exercises.js';
import { isStopped, ofItems, opening, pressure, sourcesPart, watchParts } from './parts.js';
import { itemHeading } from './record.js';

/** What is proposed for an exercise: what changes, from what to what. */
function changeFields(translate: Translator, item: ProposalItem): Block {
  const { load, percentOneRepMax, percentLop, cuffMmHg, sets } = item;
  const lifted = (weight: number | undefined): string | undefined => {
    if (weight === undefined) return undefined;
    const words = amountToSet(translate, weight, loadUnitCode(load!.unit));
    if (!percentOneRepMax) return words;
    // Of the load in the proposal: a practitioner may have changed it.
    const share = (percentOneRepMax.from * weight) / load!.from;
    return translate('page.share-of-maximum', { load: words, percent: bareAmount(translate, share, '%') });
  };
  const pressed = (mmHg: number | undefined, share: number | undefined): string | undefined =>
    mmHg === undefined
      ? undefined
      : translate('page.share-asked', { pressure: pressure(translate, mmHg), percent: format(share!) });
  const moved = (from: string | undefined, to: string | undefined): string =>
    from === to
      ? translate('page.kept', { value: from! })
      : translate('page.from-to', { from: from!, to: to ?? translate('page.no-number') });
  return fields(
    [translate('page.load'), load ? moved(lifted(load.from), lifted(load.to)) : translate('page.no-load')],
    [
      translate('page.cuff'),
      cuffMmHg
        ? moved(pressed(cuffMmHg.from, percentLop!.from), pressed(cuffMmHg.to, percentLop!.to))
        : translate('page.no-cuff'),
    ],
    sets && [translate('page.sets'), moved(setsBriefly(translate, sets.from), setsBriefly(translate, sets.to))],
  );
}

/** Why, each reason once; with the exercises it is about, where it is not every one. */
function reasonLines(translate: Translator, items: readonly ProposalItem[]): string[] {
  const reasons = new Map(items.flatMap((item) => item.reasons.map((reason) => [messageKey(reason), reason])));
  return [...reasons].map(([key, reason]) => {
    const own = items.filter((item) => item.reasons.some((other) => messageKey(other) === key));
    return ofItems(translate, sentence(translate, reason), own, items);
  });
}

/** A proposal as a page; while a stop is in force, the stop and no number. */
export function proposalBlocks(proposal: Proposal, translate: Translator): Block[] {
  const { rule, painRule, items, measureAgain, stops } = proposal;
  const stopped = isStopped(proposal);
  const grade = ({ evidence }: Pick<typeof rule, 'evidence'>): string => named(translate, 'grade', evidence);
  // What is a reason already is no caution again.
  const reasons = new Set(items.flatMap((item) => item.reasons.map(messageKey)));
  const left = proposal.cautions.filter((message) => !reasons.has(messageKey(message)));
  const text = sentence(translate, { code: `rule-${rule.id}`, text: rule.text });
  const rules = [
    translate('page.rule', { rule: rule.id, grade: grade(rule), text }),
    translate('page.pain-rule', { rule: named(translate, 'value', painRule.id), grade: grade(painRule) }),
  ];
  return [
    ...opening(translate, 'page.proposal', proposal),
    ...items.flatMap((item, index) => [
      itemHeading(translate, item, index),
      lines(translate(`page.propose-${item.action}`)),
      ...(stopped ? [] : [changeFields(translate, item)]),
    ]),
    ...(stopped ? [] : part(translate('page.why'), lines(...rules), { points: reasonLines(translate, items) })),
    ...part(
      translate('page.measure-again'),
      pointsOr(
        translate('page.nothing'),
        measureAgain.map((again) => {
          const asked = sentence(translate, again);
          return `${again.due ? translate('page.due', { text: asked }) : asked} [${grade(again)}]`;
        }),
      ),
    ),
    ...(stopped ? [] : watchParts(translate, { stops, cautions: left })),
    ...sourcesPart(translate, proposal),
  ];
}
