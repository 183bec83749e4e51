import { idsIn } from './cite.js';
import { describe, refuse } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import type { Source } from '../evidence/source.js';
import { sources, type SourceId } from '../evidence/sources.js';
import { columnsAsAbout } from '../study/column-answer.js';
import { version } from '../study/version.js';
import { statisticsUsed } from './statistics-used.js';
import { oneOf } from '../answer/needs.js';
import { HOLDS_ANSWERS } from './needs.js';

/** One record of CSL-JSON (Citation Style Language 1.0.2), without authors. */
export interface CslRecord {
  /** Id of the source, or `cuffwork` for this package. */
  readonly id: SourceId | 'cuffwork';
  /** CSL item type of the source. */
  readonly type: 'article-journal' | 'document' | 'software';
  /** Title of the work. */
  readonly title: string;
  /** Journal that the article is in. */
  readonly 'container-title'?: string;
  /** Year of publication, as CSL date parts. */
  readonly issued?: {
    /** One date of one part, the year. */
    readonly 'date-parts': readonly [readonly [number]];
  };
  /** Volume of the journal. */
  readonly volume?: string;
  /** Issue within the volume. */
  readonly issue?: string;
  /** Pages of the article. */
  readonly page?: string;
  /** Digital object identifier. */
  readonly DOI?: string;
  /** PubMed identifier. */
  readonly PMID?: string;
  /** Web address. */
  readonly URL?: string;
  /** What was read of the source, or the version of this package. */
  readonly note?: string;
}

/** This package, as reference managers take software: version and licence. */
const software = (): CslRecord => ({
  id: 'cuffwork',
  type: 'software',
  title: 'cuffwork: restriction training in numbers',
  note: `Computer software, version ${version}`,
});

/** Options of {@link bibliography}. */
export interface BibliographyOptions<Format extends 'bibtex' | 'csl-json' = 'bibtex' | 'csl-json'> {
  /** Format of the records: BibTeX or CSL-JSON. */
  readonly format: Format;
}

/** `25(6)` is volume 25, issue 6. */
function volumeAndIssue(volume: string | undefined): { readonly volume?: string; readonly issue?: string } {
  const [, first, second] = /^([^(]*)(?:\((.+)\))?$/.exec(volume ?? '') ?? [];
  return { ...(first && { volume: first.trim() }), ...(second && { issue: second }) };
}

function cslRecord(id: SourceId): CslRecord {
  const { title, about, container, year, volume, pages, doi, pmid, url, note }: Source = sources[id];
  return {
    id,
    type: container !== undefined && volume !== undefined ? 'article-journal' : 'document',
    title: title ?? `[title not checked: ${about}]`,
    ...(container !== undefined && { 'container-title': container }),
    ...(year !== undefined && { issued: { 'date-parts': [[year]] } }),
    ...volumeAndIssue(volume),
    ...(pages !== undefined && { page: pages.replaceAll('–', '-') }),
    ...(doi !== undefined && { DOI: doi }),
    ...(pmid !== undefined && { PMID: pmid }),
    ...(url !== undefined && { URL: url }),
    ...(note !== undefined && { note }),
  };
}

const TEX: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '{': '\\{',
  '}': '\\}',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}',
  '–': '--',
  '—': '---',
};

/** Text as BibTeX reads it back: letters stay UTF-8, what TeX would take as its own is escaped. */
export const escapeTex = (text: string): string => text.replace(/[\\{}~^&%$#_–—]/g, (sign) => TEX[sign] ?? `\\${sign}`);

function bibtexRecord(record: CslRecord): string {
  const { id, type, issued } = record;
  // Doubled braces keep the capitals of a title; what is an address is verbatim.
  const fields: readonly (readonly [string, string | undefined])[] = [
    ['title', `{${escapeTex(record.title)}}`],
    [type === 'article-journal' ? 'journal' : 'howpublished', record['container-title']],
    ['year', issued && String(issued['date-parts'][0][0])],
    ['volume', record.volume],
    ['number', record.issue],
    ['pages', record.page?.replace(/(\d)-(\w)/, '$1--$2')],
    ['doi', record.DOI],
    ['pmid', record.PMID],
    ['url', record.URL],
    ['note', record.note],
  ];
  const lines = fields.flatMap(([name, text]) => {
    if (text === undefined) return [];
    const verbatim = name === 'title' || name === 'doi' || name === 'url';
    return [`  ${name} = {${verbatim ? text : escapeTex(text)}},`];
  });
  return [`@${type === 'article-journal' ? 'article' : 'misc'}{${id},`, ...lines, '}'].join('\n');
}

/**
 * The publications behind an answer, a plan, a column answer, or anything that holds them, for a reference manager: just those used, each once, those of the statistics among them, and this package last. Authors are left out on purpose; complete them from the DOI.
 *
 * @param used - an answer, a plan, a column answer (or its `about`), or a list of them
 * @param options - `format`: `'bibtex'` for BibTeX text, `'csl-json'` for records of the Citation Style Language
 * @returns BibTeX as one text, or CSL-JSON as a list of records.
 * @throws InputError where `used` is not plain JSON, or the format is neither.
 *
 * @example
 * ```ts
 * import { testedOneRepMax } from 'cuffwork';
 * import { bibliography } from 'cuffwork/explain';
 * const maximum = testedOneRepMax({ load: 100 });
 * bibliography(maximum, { format: 'bibtex' }).split('\n')[0]; // => '@article{one-rep-max-reliability-2020,'
 * bibliography(maximum, { format: 'csl-json' })[0]?.type; // => 'article-journal'
 * ```
 */
export function bibliography(used: object, options: BibliographyOptions<'bibtex'>): string;
export function bibliography(used: object, options: BibliographyOptions<'csl-json'>): CslRecord[];
export function bibliography(used: object, options: BibliographyOptions): string | CslRecord[] {
  const document = plainInput(used, HOLDS_ANSWERS, columnsAsAbout);
  const ids = new Set<SourceId>([...idsIn(document), ...statisticsUsed(document).flatMap((used) => used.sources)]);
  const records = [...[...ids].map(cslRecord), software()];
  let format: unknown;
  try {
    format = (options as Partial<BibliographyOptions> | undefined)?.format;
  } catch {
    // A format that cannot be read is none.
  }
  if (format === 'csl-json') return records;
  if (format === 'bibtex') return records.map((record) => `${bibtexRecord(record)}\n`).join('\n');
  refuse('not-one-of', ['format'], oneOf(['bibtex', 'csl-json']), describe(format));
}
