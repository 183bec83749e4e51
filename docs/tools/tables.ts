import { equations, sources, type OcclusionEquation, type OneRepMaxEquation, type Source } from '../../src/index.js';

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
const fields = (symbols: OcclusionEquation['symbols']): string[] =>
  Object.values(symbols).map((use) => (typeof use === 'string' ? use : use.field));
const inputs = (symbols: OcclusionEquation['symbols']): string =>
  fields(symbols)
    .map((field) => short[field] ?? field)
    .join(', ');

const place = ({ container, year, volume, pages, title, about }: Source): string =>
  container ? `${container} ${year}${volume ? `;${volume}${pages ? `:${pages}` : ''}` : ''}` : (title ?? about ?? '');
const plain = (value: number): string => String(Number(value.toFixed(1)));

function fittedRange({ fitted, fittedNotKnown }: OcclusionEquation): string {
  const known = Object.entries(fitted).map(([field, { low, high }]) => `${short[field] ?? field} ${low} to ${high}`);
  return known.join(', ') + (fittedNotKnown.length > 0 ? `${known.length > 0 ? '; else ' : ''}not known` : '');
}

/** Which occlusion-pressure equation takes what. */
export const occlusionTable = (): string =>
  table(
    ['equation', 'limb', 'cuff', 'posture of the sample', 'inputs', 'grade'],
    equations.occlusionPressure.map(({ id, limb, cuffWidthCm, posture, symbols, evidence }: OcclusionEquation) => [
      `\`${id}\``,
      { any: 'any', leg: 'thigh', arm: 'arm' }[limb],
      cuffWidthCm === 'any' ? 'any' : `${cuffWidthCm} cm`,
      posture === 'none' ? 'knows none' : posture === 'not-stated' ? 'not stated' : posture,
      inputs(symbols),
      `\`${evidence}\``,
    ]),
  );

/** Whom each occlusion-pressure equation was made on, and how wrong it is. */
export const occlusionErrorTable = (): string =>
  table(
    ['equation', 'sample', 'fitted range', 'standard deviation of its error', 'source'],
    equations.occlusionPressure.map((equation: OcclusionEquation) => {
      const { id, sample, error, sources: from } = equation;
      const { standardDeviationMmHg: sd, share } = error;
      const size = sd === undefined ? `${100 * share!} % of the answer` : `${plain(sd)} mmHg`;
      const words = [`\`${id}\``, sample, fittedRange(equation), `${size} (\`${error.evidence}\`)`];
      return [...words, place(sources[from[0]!])];
    }),
  );

/** Which equation for a one-repetition maximum is what. */
export const oneRepMaxTable = (): string =>
  table(
    ['equation', 'formula', 'inputs', 'rests on', 'grade', 'source'],
    equations.oneRepetitionMaximum.map(
      ({ id, formula, symbols, basis, evidence, sources: from }: OneRepMaxEquation) => [
        `\`${id}\``,
        `\`${formula}\``,
        inputs(symbols),
        { data: 'data', practitioner: 'practice, no published data' }[basis],
        `\`${evidence}\``,
        place(sources[from[0]!]),
      ],
    ),
  );

/** Every publication, by journal and year. */
export const publicationsList = (): string =>
  Object.entries(sources as Readonly<Record<string, Source>>)
    .map(([id, source]) => {
      const { title, about, container, doi, pmid, url, note } = source;
      const link = doi ? `[doi ${doi}](https://doi.org/${doi})` : pmid ? `PMID ${pmid}` : url ? `<${url}>` : '';
      const words = [
        title ? `${title}.` : `Title not at hand: ${about}.`,
        container && `${place(source)}.`,
        link && `${link}.`,
        note && `(${note}.)`,
      ];
      return `- \`${id}\`: ${words.filter(Boolean).join(' ')}`;
    })
    .join('\n');
