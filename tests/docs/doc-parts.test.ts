import { describe, expect, it } from 'vitest';
import { publicNames, type PublicName } from '../../docs/tools/public-names.js';

/** A number has its unit in square brackets, or is a plain count or share, and says so. */
const UNIT = /\[.+\]|\b(repetitions|ratio|fraction|share|coefficient|index|rating|reliability)\b/;

/** What a reader of the docs is owed of a public name, and does not find. */
function missing({ entry, name, kind, file, comment, summary, parameters, returns }: PublicName): string[] {
  const lacks: string[] = [];
  const need = (part: string, found: boolean) => void (found || lacks.push(`${name}: ${part}`));
  need('a summary', /^[\p{Lu}\d`].{5,}[.:]$/u.test(summary));
  if (kind === 'type') return lacks;
  need('an @example with a value', /@example\s[\s\S]*\/\/ => /.test(comment));
  if (kind === 'value') return lacks;
  need('@returns', /@returns .{3}/.test(comment) || returns.length === 0);
  for (const parameter of parameters) {
    need(`@param ${parameter.name}`, parameter.comment !== '');
  }
  for (const { name: parameter, type, comment: text } of parameters) {
    if (type === 'number') need(`a unit in square brackets for ${parameter}`, UNIT.test(text));
  }
  const answers = returns.includes('evidence') && returns.includes('unit');
  const bare = entry === 'cuffwork/equations';
  // A list item may hold several: “Error and evidence: those of the maximum.”
  const item = (part: string) => new RegExp(`^- [^:]*\\b${part}\\b[^:]*:`, 'im').test(comment);
  // Whoever says whose evidence it is has said whose error and source.
  const anothers = /^- [^:]*evidence[^:]*: (that|those) of/im.test(comment);
  if (bare) need('Formula:', comment.includes('Formula:'));
  if (bare || answers) {
    need('a list item with its evidence', item('evidence'));
    need('a list item with its source', anothers || item('source'));
  }
  // A statistic has neither a sample nor an error of its own.
  if (answers || file.includes('/equations/')) need('a list item with its error', anothers || item('error'));
  if (file.includes('/equations/')) need('Fitted range:', comment.includes('Fitted range:'));
  if (!bare && parameters[0]?.name === 'input') need('@throws', comment.includes('@throws InputError'));
  return lacks;
}

const names = publicNames();

describe('the doc comments of the public names', () => {
  it('are found', () => {
    expect(names.filter(({ kind }) => kind === 'function').length).toBeGreaterThan(20);
    expect(names.filter(({ kind }) => kind === 'type').length).toBeGreaterThan(20);
  });
  it('lack nothing', () => {
    expect(names.flatMap(missing)).toEqual([]);
  });
  it('would be missed', () => {
    const [estimate] = names.filter(({ name }) => name === 'estimateOcclusionPressure');
    expect(missing({ ...estimate!, comment: '', summary: '' }).length).toBeGreaterThan(5);
  });
});
