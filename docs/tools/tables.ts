import { ended } from '../../src/evidence/sources.js';
import { messages, sources, type Source } from '../../src/text/index.js';
import { screeningQuestions, symptoms, type SymptomRow } from '../../src/plan/index.js';
import { SYMPTOM_GRADES } from '../../src/plan/symptoms.js';
import { pageWords } from '../../src/text/page-words.js';
import coverage from '../working/coverage.json' with { type: 'json' };
import { maximumViews, occlusionViews, widthWords, type MaximumView, type OcclusionView } from './equation-views.js';
import { table } from './markdown-table.js';

const short: Readonly<Record<string, string>> = {
  circumferenceCm: 'circumference',
  systolicMmHg: 'systolic pressure',
  diastolicMmHg: 'diastolic pressure',
  cuffWidthCm: 'cuff width',
  ageYears: 'age',
};
const place = ({ container, year, volume, pages, title, about }: Source): string =>
  container
    ? `${container}${year ? ` ${year}` : ''}${volume ? `;${volume}${pages ? `:${pages}` : ''}` : ''}`
    : (title ?? about ?? 'none was read');
const sourceWords = ({ sources: [first] }: { readonly sources: readonly string[] }): string =>
  place((sources as Readonly<Record<string, Source>>)[first!] ?? {});
const plain = (value: number): string => String(Number(value.toFixed(1)));

function fittedRange({ fitted, fittedNotKnown }: OcclusionView): string {
  const known = Object.entries(fitted).map(([field, ends]) => `${short[field] ?? field} ${ends?.low}–${ends?.high}`);
  return known.join(', ') + (fittedNotKnown.length > 0 ? `${known.length > 0 ? '; else ' : ''}not known` : '');
}

function errorWords({ standardDeviationMmHg, share, curve, evidence }: OcclusionView['error']): string {
  if (curve) {
    const { people, laboratory } = curve.error;
    return `people ${plain(100 * people)} %, laboratories and cuffs ${plain(100 * laboratory)} % of the pressure above diastolic, and its coefficients (\`${evidence}\`)`;
  }
  if (standardDeviationMmHg !== undefined) return `${plain(standardDeviationMmHg)} mmHg (\`${evidence}\`)`;
  if (share === undefined) return 'not known';
  const each = typeof share === 'number' ? { '': share } : share;
  const words = Object.entries(each).map(([what, part]) => `${what} ${plain(100 * part)} %`.trim());
  return `${words.join(', ')} of the answer (\`${evidence}\`)`;
}

/** The way from a row to the card of its equation. */
const toCard = (id: string): string => `[\`${id}\`](equations.md#${id})`;
const limbWords = (limb: OcclusionView['limb']): string => ({ any: 'any', leg: 'thigh', arm: 'arm' })[limb];
const postureWords = (posture: string): string =>
  ({ none: 'no term', any: 'a term for each', 'not-stated': 'not reported' })[posture] ?? posture;

/** The equations of occlusion pressure side by side. */
export const occlusionTable = (): string =>
  table(
    ['equation', 'limb', 'cuff', 'posture of the sample', 'standard deviation of its error', 'grade'],
    occlusionViews.map(({ id, limb, cuffWidthCm, posture, error, evidence }) => [
      toCard(id),
      limbWords(limb),
      widthWords(cuffWidthCm),
      postureWords(posture),
      errorWords(error),
      `\`${evidence}\``,
    ]),
  );

const liftWords = ({ lifts }: MaximumView): string =>
  typeof lifts === 'object' ? lifts.join(', ').replaceAll('-', ' ') : (lifts ?? 'not known');
const fittedWords = ({ fittedRepetitions: fitted }: MaximumView): string =>
  !fitted ? 'not known' : fitted.low === fitted.high ? String(fitted.low) : `${fitted.low}–${fitted.high}`;
const maximumErrorWords = ({ error }: MaximumView): string => {
  if (!error) return 'not known';
  return 'share' in error
    ? `${plain(100 * error.share)} % of the maximum`
    : `${plain(error.standardDeviation)} ${error.unit}`;
};
const basisWords = ({ basis }: MaximumView): string =>
  ({ data: 'data', practitioner: 'practice, no published data' })[basis] ?? 'not known';

/** The equations of a one-repetition maximum side by side. */
export const oneRepMaxTable = (): string =>
  table(
    ['equation', 'lifts', 'fitted repetitions', 'rests on', 'grade'],
    maximumViews.map((view) => [
      toCard(view.id),
      liftWords(view),
      fittedWords(view),
      basisWords(view),
      `\`${view.evidence}\``,
    ]),
  );

const card = (id: string, name: string, formula: string, rows: readonly (readonly [string, string])[]): string =>
  [
    `### ${id}`,
    `${name}.`,
    formula,
    table(
      [' ', ' '],
      rows.filter(([, words]) => words !== ''),
    ),
  ].join('\n\n');
/** A formula as people write it. */
const written = (formula: string): string => formula.replaceAll(' * ', ' × ').replaceAll(' - ', ' − ');
const symbolWords = (symbols: OcclusionView['symbols']): string =>
  Object.entries(symbols)
    .map(([symbol, use]) => {
      const { field, codes = {} } = typeof use === 'string' ? { field: use } : use;
      const values = Object.entries(codes).map(([code, value]) => `${code} ${value}`);
      return `${symbol} = \`${field}\`${values.length > 0 ? ` (${values.join(', ')})` : ''}`;
    })
    .join(', ');

/** A card for each equation of occlusion pressure. */
export const occlusionCards = (): string =>
  occlusionViews
    .map((view) =>
      card(view.id, view.name, `Formula: LOP = ${written(view.formula)}`, [
        ['symbols', symbolWords(view.symbols)],
        ['limb', limbWords(view.limb)],
        ['cuff', widthWords(view.cuffWidthCm)],
        ['posture', postureWords(view.posture)],
        ['sample', view.sample ?? 'not checked'],
        ['fitted range', fittedRange(view)],
        ['error, standard deviation', errorWords(view.error)],
        ['grade', `\`${view.evidence}\``],
        ['source', sourceWords(view)],
      ]),
    )
    .join('\n\n');

/** A card for each equation of a one-repetition maximum. */
export const maximumCards = (): string =>
  maximumViews
    .map((view) =>
      card(view.id, view.name, `Formula: 1RM = ${written(view.formula)}`, [
        ['unit', view.unit ?? 'that of the load'],
        ['lifts', liftWords(view)],
        ['fitted repetitions', fittedWords(view)],
        ['rests on', basisWords(view)],
        ['sample', view.sample ?? 'not checked'],
        ['error, standard deviation', maximumErrorWords(view)],
        ['grade', `\`${view.evidence}\``],
        ['source', sourceWords(view)],
      ]),
    )
    .join('\n\n');

/** Every publication, by journal and year. */
export const publicationsList = (): string =>
  Object.entries(sources as Readonly<Record<string, Source>>)
    .map(([id, source]) => {
      const { title, about, container, doi, pmid, url, note } = source;
      const link = doi ? `[doi ${doi}](https://doi.org/${doi})` : pmid ? `PMID ${pmid}` : url ? `<${url}>` : '';
      const words = [
        ended(title ?? `Title not checked: ${about}`),
        container && ended(place(source)),
        link && `${link}.`,
        note && `(${note}.)`,
      ];
      return `- \`${id}\`: ${words.filter(Boolean).join(' ')}`;
    })
    .join('\n');

const bullets = (texts: readonly string[]): string => texts.map((text) => `- ${text}`).join('\n');

const questions = (outcome: 'refer' | 'caution'): string =>
  bullets(screeningQuestions().flatMap((asked) => (asked.outcome === outcome ? [asked.question] : [])));

/** The questions of `screen` whose yes sends a person to a doctor. */
export const referList = (): string => questions('refer');

/** The questions of `screen` whose yes asks for a doctor’s advice first. */
export const askFirstList = (): string => questions('caution');

/** Symptoms by what to do at each, in the words of a page. */
const symptomLists = (when: SymptomRow['when']): string[] =>
  SYMPTOM_GRADES.flatMap((grade) => {
    const rows = symptoms.filter((row) => row.grade === grade && row.when === when);
    return [`${pageWords[`page.then-${grade}`]}:`, bullets(rows.map(({ code }) => messages[code]))];
  });

/** What to deflate at, and what to do then: the stop criteria of every plan. */
export const stopCriteria = (): string => [...symptomLists('session'), messages['burn-usual']].join('\n\n');

/** What to watch for in the days after a session, and what to do then. */
export const afterwards = (): string => symptomLists('after').join('\n\n');

/** What a plan says of screening. */
export const screenFirst = (): string => messages['screen-first'];

/** How often 95 % intervals held the truth on simulated studies, by docs/working/coverage.ts. */
export const coverageTable = (of: 'agreement' | 'equation'): string =>
  table(
    ['95 % interval of', ...coverage.people.map((n) => `n = ${n}`)],
    coverage[of].map(({ what, percent }) => [what, ...percent.map((share) => share?.toFixed(1) ?? '–')]),
  );
