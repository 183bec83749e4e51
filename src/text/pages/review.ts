import { amountToSet, named } from '../../answer/translate.js';
import type { PlanCode } from '../../plan/document-messages.js';
import { assessedWords, findingValues, measureWords, placeWords } from '../../plan/measures.js';
import type { Assessment, Review, ReviewFinding } from '../../plan/review-plan.js';
import { part, pointsOr, type Block } from '../blocks.js';
import { cautionLine } from '../section.js';
import { textIfKnown, type Translator } from '../translator.js';
import { isStopped, opening, sourcesPart } from './parts.js';

/** A figure outside a range. */
export function findingText(translate: Translator, finding: ReviewFinding): string {
  const id = String(finding.values?.['guideline']);
  const guideline = textIfKnown(translate, `guideline.${id}`) ?? id;
  return translate(finding.code as PlanCode, findingValues(translate, finding, guideline));
}

/** The same, with how well the range is backed. */
export function findingLine(translate: Translator, finding: ReviewFinding): string {
  const severity = named(translate, 'severity', finding.severity);
  const line = translate('with-severity', { severity, text: findingText(translate, finding) });
  return `${line} [${named(translate, 'grade', finding.evidence)}]`;
}

/** A figure inside a range. */
function insideText(translate: Translator, assessed: Assessment): string {
  const { asked, evidence, unit } = assessed;
  const values = { ...assessedWords(translate, assessed), grade: named(translate, 'grade', evidence) };
  return asked === undefined
    ? translate('page.assessed', values)
    : translate('page.assessed-asked', { ...values, asked: amountToSet(translate, asked, unit) });
}

/** What is alike on every limb once; where a measure differs, each line names its place. */
function insideLines(translate: Translator, inside: readonly Assessment[]): string[] {
  const byMeasure = new Map<Assessment['measure'], Map<string, string[]>>();
  for (const assessed of inside) {
    const own = byMeasure.get(assessed.measure) ?? new Map<string, string[]>();
    const text = insideText(translate, assessed);
    byMeasure.set(assessed.measure, own.set(text, [...(own.get(text) ?? []), placeWords(translate, assessed)]));
  }
  return [...byMeasure.values()].flatMap((own) =>
    [...own].map(([text, places]) =>
      own.size === 1 ? text : translate('page.assessed-where', { where: [...new Set(places)].join('; '), text }),
    ),
  );
}

/** A review as a page; of a document with a stop in force, the stop and nothing that could be set. */
export function reviewBlocks(review: Review, translate: Translator): Block[] {
  const { of, guideline, findings, inside, notAssessed } = review;
  const nothing = translate('page.nothing');
  const outside = findings.map((finding) =>
    finding.measure === undefined ? cautionLine(translate, finding) : findingLine(translate, finding),
  );
  const missing = notAssessed
    .map((measure) => measureWords(translate, measure))
    .map(({ name, of: part }) => name + part);
  return [
    ...opening(translate, `page.review-${of}`, review, [
      translate('page.compared-with', { guideline: translate(`guideline.${guideline.id}`) }),
    ]),
    ...(isStopped(review)
      ? []
      : [
          ...part(translate('page.outside'), pointsOr(nothing, outside)),
          ...part(translate('page.inside'), pointsOr(nothing, insideLines(translate, inside))),
          ...part(translate('page.not-assessed'), { points: missing }),
        ]),
    ...sourcesPart(translate, review),
  ];
}
