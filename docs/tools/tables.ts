import { sources, type Source } from '../../src/text/index.js';
import { messages } from '../../src/text/index.js';
import { screeningQuestions, symptoms, type SymptomRow } from '../../src/plan/index.js';
import coverage from '../working/coverage.json' with { type: 'json' };
import { maximumViews, occlusionViews, widthWords, type MaximumView, type OcclusionView } from './equation-views.js';

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');

const short: Readonly<Record<string, string>> = {
  circumferenceCm: 'girth',
  systolicMmHg: 'SBP',
  diastolicMmHg: 'DBP',
  cuffWidthCm: 'cuff width',
  ageYears: 'age',
  repetitionsToFailure: 'repetitions to failure',
};
const inputs = (symbols: OcclusionView['symbols']): string =>
  Object.values(symbols)
    .map((use) => (typeof use === 'string' ? use : use.field))
    .map((field) => short[field] ?? field)
    .join(', ');

const place = ({ container, year, volume, pages, title, about }: Source): string =>
  container
    ? `${container}${year ? ` ${year}` : ''}${volume ? `;${volume}${pages ? `:${pages}` : ''}` : ''}`
    : (title ?? about ?? 'none was read');
const sourceWords = ({ sources: [first] }: { readonly sources: readonly string[] }): string =>
  place((sources as Readonly<Record<string, Source>>)[first!] ?? {});
const plain = (value: number): string => String(Number(value.toFixed(1)));

function fittedRange({ fitted, fittedNotKnown }: OcclusionView): string {
  const known = Object.entries(fitted).map(([field, ends]) => `${short[field] ?? field} ${ends?.low} to ${ends?.high}`);
  return known.join(', ') + (fittedNotKnown.length > 0 ? `${known.length > 0 ? '; else ' : ''}not known` : '');
}

/** Which occlusion-pressure equation takes what. */
export const occlusionTable = (): string =>
  table(
    ['equation', 'limb', 'cuff', 'posture of the sample', 'inputs', 'grade'],
    occlusionViews.map(({ id, limb, cuffWidthCm, posture, symbols, evidence }) => [
      `\`${id}\``,
      { any: 'any', leg: 'thigh', arm: 'arm' }[limb],
      widthWords(cuffWidthCm),
      { none: 'no term', any: 'a term for each', 'not-stated': 'not reported' }[posture] ?? posture,
      inputs(symbols),
      `\`${evidence}\``,
    ]),
  );

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

/** Whom each occlusion-pressure equation was made on, and how wrong it is. */
export const occlusionErrorTable = (): string =>
  table(
    ['equation', 'sample', 'fitted range', 'standard deviation of its error', 'source'],
    occlusionViews.map((view) => [
      `\`${view.id}\``,
      view.sample ?? 'not checked',
      fittedRange(view),
      errorWords(view.error),
      sourceWords(view),
    ]),
  );

/** Which equation for a one-repetition maximum is what. */
export function oneRepMaxTable(): string {
  const columns: readonly (readonly [string, (view: MaximumView) => string | undefined])[] = [
    ['equation', ({ id }) => `\`${id}\``],
    ['formula', ({ formula }) => `\`${formula}\``],
    ['lifts', ({ lifts }) => (typeof lifts === 'object' ? lifts.join(', ').replaceAll('-', ' ') : lifts)],
    ['fitted repetitions', ({ fittedRepetitions: fitted }) => fitted && `${fitted.low} to ${fitted.high}`],
    ['rests on', ({ basis }) => ({ data: 'data', practitioner: 'practice, no published data' })[basis] ?? 'not known'],
    ['grade', ({ evidence }) => `\`${evidence}\``],
    ['source', sourceWords],
  ];
  const told = columns.filter(([, words]) => maximumViews.some((view) => words(view) !== undefined));
  const rows = maximumViews.map((view) => told.map(([, words]) => words(view) ?? 'not known'));
  return table(
    told.map(([head]) => head),
    rows,
  );
}

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
      const field = typeof use === 'string' ? use : use.field;
      return `${symbol} = \`${field}\``;
    })
    .join(', ');

/** A card for each equation of occlusion pressure. */
export const occlusionCards = (): string =>
  occlusionViews
    .map((view) =>
      card(view.id, view.name, `Formula: LOP = ${written(view.formula)}`, [
        ['symbols', symbolWords(view.symbols)],
        ['limb', { any: 'any', leg: 'thigh', arm: 'arm' }[view.limb]],
        ['cuff', widthWords(view.cuffWidthCm)],
        [
          'posture',
          { none: 'no term', any: 'a term for each', 'not-stated': 'not reported' }[view.posture] ?? view.posture,
        ],
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
        ['lifts', typeof view.lifts === 'object' ? view.lifts.join(', ').replaceAll('-', ' ') : (view.lifts ?? '')],
        [
          'fitted repetitions',
          view.fittedRepetitions ? `${view.fittedRepetitions.low}–${view.fittedRepetitions.high}` : 'not known',
        ],
        ['rests on', { data: 'data', practitioner: 'practice, no published data' }[view.basis] ?? 'not known'],
        ['sample', view.sample ?? 'not checked'],
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
        title ? `${title}.` : `Title not checked: ${about}.`,
        container && `${place(source)}.`,
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

const symptomList = (grade: SymptomRow['grade'], when: SymptomRow['when']): string =>
  bullets(symptoms.flatMap((row) => (row.grade === grade && row.when === when ? [messages[row.code]] : [])));

/** What to deflate at, and what to do then: the stop criteria of every plan. */
export const stopCriteria = (): string =>
  [
    'Call the emergency number:',
    symptomList('emergency', 'session'),
    'See a clinician before another session:',
    symptomList('clinician-first', 'session'),
    'Rest, and lower the pressure next time:',
    symptomList('lower', 'session'),
    messages['burn-usual'],
  ].join('\n\n');

/** What to watch for in the days after a session, and what to do then. */
export const afterwards = (): string =>
  [
    'Call the emergency number:',
    symptomList('emergency', 'after'),
    'See a clinician before another session:',
    symptomList('clinician-first', 'after'),
    'Do less next time:',
    symptomList('lower', 'after'),
  ].join('\n\n');

/** What a plan says of screening. */
export const screenFirst = (): string => messages['screen-first'];

/** How often 95 % intervals held the truth on simulated studies, by docs/working/coverage.ts. */
export const coverageTable = (of: 'agreement' | 'equation'): string =>
  table(
    ['95 % interval of', ...coverage.people.map((n) => `n = ${n}`)],
    coverage[of].map(({ what, percent }) => [what, ...percent.map((share) => share?.toFixed(1) ?? '–')]),
  );
