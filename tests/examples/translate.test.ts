import { describe, expect, it } from 'vitest';
import { italian, languages, targetIn, type Language } from '../../examples/recipes/translate.js';
import { messages, words } from '../../src/text/index.js';

const low = { occlusion: 172, percentLop: 32.5, gaugeStepMmHg: 5 };

describe('the example of translating', () => {
  it.each<[Language, string, RegExp]>([
    ['en', 'must be a number from', /below the 40 to 80 %/],
    ['de', 'eine Zahl von', /32,5 % (ist|liegt|sind)/],
    ['it', 'deve essere un numero da', /^32,5 % è meno di quanto indicano le linee guida, 40–80 %/],
  ])('gives problems, cautions and a page in %s', (language, problem, caution) => {
    const { problems } = targetIn(language, { ...low, percentLop: 300 });
    expect(problems).toHaveLength(1);
    expect(problems![0]).toContain(problem);
    const { cautions, page, line } = targetIn(language, low);
    expect(cautions!.join('\n')).toMatch(new RegExp(caution.source, 'm'));
    expect(line).toContain('55 mmHg');
    expect(page).toContain('<');
  });

  it('asks after a slip in each language', () => {
    const asked = Object.keys(languages).map(
      (language) => targetIn(language as Language, { ...low, percent: 50 }).problems![0],
    );
    expect(asked).toEqual([
      expect.stringContaining('Did you mean percentLop?'),
      expect.stringContaining('Meinten Sie percentLop?'),
      'percent non è un campo. Intendeva percentLop?',
    ]);
  });

  it('leaves in English what the catalogue leaves out', () => {
    expect(Object.keys(italian)).toHaveLength(Object.keys({ ...messages, ...words }).length);
    expect(targetIn('it', low).page).toContain('rounded down, steps of 5 mmHg');
  });
});
