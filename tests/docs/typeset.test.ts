import { describe, expect, it } from 'vitest';
import { publicNames } from '../../docs/tools/public-names.js';
import { formulaTex, typeset } from '../../docs/tools/typeset.js';

describe('formulas of the doc comments, typeset', () => {
  // Source: the same formulas written in LaTeX by hand.
  it.each([
    [
      'LOP = (SBP − DBP) × C / (3 × W) + DBP',
      '\\mathrm{LOP} = \\frac{\\left(\\mathrm{SBP}-\\mathrm{DBP}\\right)\\times C}{3\\times W}+\\mathrm{DBP}',
      '',
    ],
    ['P = 65.290 × W₂, rounded down', 'P = 65.290\\times W_{2}', 'rounded down'],
    ['1RM = 1.5 × w^2 [kg]', '\\mathrm{1RM} = 1.5\\times {w}^{2}', '[kg]'],
    ['B = √2 × log₁₀(AC, B); more', 'B = \\sqrt{2}\\times \\log_{10}\\left(\\mathrm{AC},\\,B\\right)', 'more'],
    ['TE = SD of the differences / 2', '\\mathrm{TE} = \\frac{\\text{SD of the differences}}{2}', ''],
  ])('%s', (line, tex, note) => expect(formulaTex(line)).toEqual({ tex, note }));

  it('leaves words as words', () => {
    expect(formulaTex('P = 120 below 51 cm, 150 below 56 cm')).toBeUndefined();
    expect(typeset('P < 120 below 51 cm')).toContain('P &lt; 120 below 51 cm');
  });

  const lines = publicNames().flatMap(({ name, comment }) =>
    [...comment.matchAll(/^Formula: ([\s\S]*?)(?=\n\s*\n|$(?![\s\S]))/gm)].map(([, line]) => ({
      name,
      line: line!.replaceAll('\n', ' '),
    })),
  );
  it('are found', () => expect(lines.length).toBeGreaterThan(5));
  it.each(lines)('$name has one that can be shown, with MathML for screen readers', ({ line }) => {
    const html = typeset(line);
    expect(html).not.toContain('katex-error');
    if (formulaTex(line)) expect(html).toMatch(/<math [\s\S]*<mo>=<\/mo>/);
  });
});
