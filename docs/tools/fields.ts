import { unitWords } from '../../src/quantity/format.js';
import { quantities, type Quantity } from '../../src/index.js';
import { table } from './markdown-table.js';

/** A field of an input as the docs know it. */
export interface Field {
  readonly name: string;
  readonly type: string;
  readonly optional: boolean;
  readonly comment: string;
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll(/\s+/g, ' ').trim();

/** What a field is when it is left out, as its comment has it. */
const defaultOf = (comment: string): string | undefined =>
  /(?:^|[;.:,] |^)([^;.]*?(?:\d[\d.]*[^;.]*?|`[^`]*`[^;.]*?|none|that of [^;.]*?)),? when left out/
    .exec(comment)?.[1]
    ?.trim();

/** The fields of an input as a table: unit, bounds, default, whether it is required, and what it means. */
export function fieldTable(fields: readonly Field[]): string {
  const rows = fields.map(({ name, type, optional, comment }) => {
    const quantity = (quantities as Readonly<Record<string, Quantity | undefined>>)[name];
    const numeric = quantity !== undefined && /\bnumber\b/.test(type);
    const unit = numeric ? unitWords[quantity.unit].trim() : '';
    const bounds = numeric ? `${quantity.min}–${quantity.max}${quantity.whole ? ', whole' : ''}` : '';
    const meaning = comment || (quantity ? quantity.name : '');
    return [
      `\`${name}\``,
      optional ? 'no' : 'yes',
      `\`${type.replaceAll('"', "'")}\``,
      unit,
      bounds,
      optional ? (defaultOf(comment) ?? '') : '',
      meaning,
    ].map(cell);
  });
  const head = ['field', 'required', 'type', 'unit', 'bounds', 'default', 'meaning'];
  return table(head, rows);
}
