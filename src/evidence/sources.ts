import { frozen } from '../quantity/frozen.js';
import type { Source } from './source.js';
import { guidanceSources } from './sources/guidance.js';
import { pressureSources } from './sources/pressure.js';
import { sessionSources } from './sources/session.js';
import { standardsSources } from './sources/standards.js';
import { strengthSources } from './sources/strength.js';
import { studySources } from './sources/study.js';

/**
 * The publications and standards that answers point to, one record each.
 *
 * @example
 * ```ts
 * import { sources } from 'cuffwork/explain';
 * sources['wide-cuffs-1993'].year; // => 1993
 * ```
 */
export const sources = frozen({
  ...pressureSources,
  ...strengthSources,
  ...sessionSources,
  ...guidanceSources,
  ...standardsSources,
  ...studySources,
} as const satisfies Record<string, Source>);

/** The id of a publication in {@link sources}. */
export type SourceId = keyof typeof sources;

/** A text with its full stop, where it has no end of its own. */
export const ended = (text: string): string => (/[.?!]$/.test(text) ? text : `${text}.`);

/** A publication as one line of text. */
export function reference(id: SourceId): string {
  const { title, about, container, year, volume, pages, doi, pmid, url, note }: Source = sources[id];
  const place = [volume, pages].filter((part) => part !== undefined).join(':');
  const issue = [container, year].filter((part) => part !== undefined).join(' ');
  return [
    ended(title ?? `[title not checked: ${about}]`),
    issue && ended(`${issue}${place && `;${place}`}`),
    doi ? `doi ${doi}.` : pmid && `PMID ${pmid}.`,
    url && `${url}.`,
    note && `[${note}]`,
  ]
    .filter(Boolean)
    .join(' ');
}
