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
const quantityOf = (name: string): Quantity | undefined =>
  (quantities as Readonly<Record<string, Quantity | undefined>>)[name];

/** The fields of an input as a table, required ones first. What a field means has its unit, bounds and default. */
export function fieldTable(fields: readonly Field[]): string {
  const rows = fields
    .toSorted((a, b) => Number(a.optional) - Number(b.optional))
    .map(({ name, type, optional, comment }) =>
      [
        `\`${name}\``,
        comment || (quantityOf(name)?.name ?? ''),
        optional ? 'no' : 'yes',
        `\`${type.replaceAll('"', "'")}\``,
      ].map(cell),
    );
  return table(['field', 'meaning', 'required', 'type'], rows);
}
