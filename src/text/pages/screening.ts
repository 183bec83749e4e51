import { named, sentence } from '../../answer/translate.js';
import type { DayCheck, Screening, ScreeningFinding } from '../../plan/questions.js';
import { joined, lines, part, pointsOr, type Block } from '../blocks.js';
import { assumptionText, sumOf } from '../section.js';
import type { Translator } from '../translator.js';
import { opening, sourcesPart } from './parts.js';

/** A finding of a screening. */
export function foundText(translate: Translator, finding: ScreeningFinding): string {
  const { outcome } = finding;
  const severity = outcome === 'refer' ? translate('page.refer') : named(translate, 'severity', outcome);
  return translate('with-severity', { severity, text: sentence(translate, finding) });
}

/** The same, with how well it is backed. */
const foundLine = (translate: Translator, finding: ScreeningFinding): string =>
  `${foundText(translate, finding)} [${joined(named(translate, 'grade', finding.evidence), finding.source)}]`;

/** What answers lead to: the outcome, its findings and what is open. */
function answeredBlocks(
  translate: Translator,
  title: 'page.screening' | 'page.day-check',
  { request, outcome: found, complete, findings, unanswered, disclaimers }: Screening | DayCheck,
): Block[] {
  const outcome = translate(`page.${found}`);
  const count = unanswered.length;
  return [
    ...opening(translate, title, { stops: [], disclaimers }, [
      joined(request.date, request.label),
      complete ? translate('page.outcome', { outcome }) : translate('page.outcome-open', { outcome, count }),
    ]),
    ...part(
      translate('page.found'),
      pointsOr(
        translate('page.nothing-found'),
        findings.map((finding) => foundLine(translate, finding)),
      ),
    ),
    ...part(translate('page.not-answered'), {
      points: unanswered.map(({ code, question }) => translate(`ask-${code}`, question)),
    }),
  ];
}

/** A screening as a page. */
export function screeningBlocks(screening: Screening, translate: Translator): Block[] {
  const { thrombosisScore } = screening;
  return [
    ...answeredBlocks(translate, 'page.screening', screening),
    { heading: translate('page.score'), level: 2 },
    { section: sumOf(thrombosisScore, translate) },
    lines(
      ...thrombosisScore.cautions.map((one) => sentence(translate, one)),
      ...thrombosisScore.assumptions.map((one) => assumptionText(translate, one)),
    ),
    ...sourcesPart(translate, screening),
  ];
}

/** A check of the day as a page. */
export const dayCheckBlocks = (check: DayCheck, translate: Translator): Block[] => [
  ...answeredBlocks(translate, 'page.day-check', check),
  ...sourcesPart(translate, check),
];
