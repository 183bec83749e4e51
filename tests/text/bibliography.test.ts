import { Cite } from '@citation-js/core';
import '@citation-js/plugin-bibtex';
import '@citation-js/plugin-csl';
import { describe, expect, it } from 'vitest';
import { estimateOcclusionPressure, targetCuffPressure, testedOneRepMax } from '../../src/index.js';
import { cite, working } from '../../src/text/index.js';
import { planSession } from '../../src/plan/index.js';
import { escapeTex } from '../../src/text/bibliography.js';
import { agreement, bootstrap, columns, estimateWith, propagate, reliability } from '../../src/study/index.js';
import { bibliography, methods, sources, type Source } from '../../src/text/index.js';
import * as study from '../../src/study/index.js';
import { publicCalls, publicFunctions } from '../support/public-functions.js';
import { fittedExample } from '../support/fitted.js';
import { refusal } from '../support/invariants.js';
import { version } from '../../src/study/version.js';

const answer = targetCuffPressure({
  percentLop: 50,
  occlusion: estimateOcclusionPressure({
    limb: 'leg',
    circumferenceCm: 54,
    systolicMmHg: 120,
    diastolicMmHg: 70,
    cuffWidthCm: 10,
    posture: 'supine',
  }),
});
const plan = planSession(publicFunctions['planSession']!.right as never);
/** Every source there is, as if one answer had used them all. */
const all = { sources: Object.keys(sources) };

describe('bibliography', () => {
  it('holds just the sources that were used, each once, and no authors', () => {
    for (const used of [answer, plan]) {
      const records = bibliography(used, { format: 'csl-json' });
      expect(records.map(({ id }) => id)).toEqual([...cite(used).map(({ id }) => id), 'cuffwork']);
      expect(records.length).toBeGreaterThan(1);
      expect(JSON.stringify(records)).not.toMatch(/author|editor/);
      expect(bibliography(used, { format: 'bibtex' })).not.toMatch(/author|editor/);
    }
    expect(bibliography(plan, { format: 'csl-json' }).length - 1).toBeLessThan(Object.keys(sources).length);
  });

  it('has one record for a publication: the same paper never under two names', () => {
    const seen = new Map<string, string>();
    for (const [id, record] of Object.entries<Source>(sources)) {
      const { doi, container, year, volume = '', pages } = record;
      const places = [doi, container && pages && [container, year, volume.split('(')[0], pages].join()];
      for (const place of places.filter((each) => each !== undefined && each !== '')) {
        expect(seen.get(place!) ?? id, place).toBe(id);
        seen.set(place!, id);
      }
    }
  });

  it('has lines of text that end no sentence twice', () => {
    for (const { text } of cite(all)) expect(text).not.toMatch(/[.?!]\./);
  });

  // Source: citation-js, which parses BibTeX on its own and makes CSL-JSON of it.
  it('is BibTeX that another program reads back to the same records', () => {
    const parsed = new Cite(bibliography(all, { format: 'bibtex' })).data;
    const records = bibliography(all, { format: 'csl-json' });
    expect(parsed.length).toBe(records.length);
    const dashes = (text: unknown) => (typeof text === 'string' ? text.replaceAll('–', '-') : text);
    records.forEach((record, index) => {
      const read = parsed[index]!;
      expect(read['id'] ?? read['citation-key']).toBe(record.id);
      expect(dashes(read['title'])).toBe(dashes(record.title));
      expect(read['DOI']).toBe(record.DOI);
      expect(read['URL']).toBe(record.URL);
      expect(dashes(read['note'])).toBe(dashes(record.note));
      expect((read['issued'] as typeof record.issued)?.['date-parts'][0][0]).toBe(record.issued?.['date-parts'][0][0]);
      if (record.type !== 'article-journal') return;
      expect(read['type']).toBe('article-journal');
      expect(read['container-title']).toBe(record['container-title']);
      expect(read['volume']).toBe(record.volume);
      expect(read['issue']).toBe(record.issue);
      expect(dashes(read['page'])).toBe(record.page);
    });
  });

  // Source: citeproc, through citation-js: the reference implementation of the Citation Style Language.
  it('is CSL-JSON that the style processor sets without losing a title', () => {
    const records = bibliography(all, { format: 'csl-json' });
    const text = new Cite(JSON.parse(JSON.stringify(records))).format('bibliography', {
      template: 'vancouver',
      lang: 'en-US',
    });
    for (const { title } of records) expect(text.toLowerCase()).toContain(title.slice(0, 25).toLowerCase());
  });

  // Source: the names of CSL 1.0.2, from memory; unknown ones would be ignored by every reader without a word.
  it('uses only names of the Citation Style Language', () => {
    const known = [
      'id',
      'type',
      'title',
      'container-title',
      'issued',
      'volume',
      'issue',
      'page',
      'DOI',
      'PMID',
      'URL',
      'note',
    ];
    for (const record of bibliography(all, { format: 'csl-json' })) {
      for (const [name, value] of Object.entries(record)) {
        expect(known).toContain(name);
        if (name !== 'issued') expect(typeof value === 'string' && value !== '', `${record.id} ${name}`).toBe(true);
      }
    }
  });

  // Source: citation-js, reading every sign that TeX keeps for itself.
  it('escapes what TeX would take as its own', () => {
    const text = 'Load & rest: 50 % of $x_1$ # {a} ~b ^c \\d – e';
    const bibtex = `@article{key,\n  title = {{${escapeTex(text)}}},\n}`;
    expect(new Cite(bibtex).data[0]!['title']).toBe(text);
  });

  it('takes what a column answer says of itself, and one’s own equation without a publication', () => {
    const { about } = columns({
      answer: 'occlusion-pressure',
      equation: 'thigh-2015',
      limb: 'leg',
      circumferenceCm: [55],
      systolicMmHg: 120,
      diastolicMmHg: 70,
      cuffWidthCm: 5,
      posture: 'supine',
    });
    expect(bibliography(about, { format: 'csl-json' }).map(({ id }) => id)).toEqual([
      ...working(about)!.sources,
      'cuffwork',
    ]);
    expect(bibliography({ sources: [] }, { format: 'csl-json' }).map(({ id }) => id)).toEqual(['cuffwork']);
  });

  it('has a title or says what it is about, for every source', () => {
    for (const [id, source] of Object.entries(sources) as [string, Source][]) {
      expect(source.title ?? source.about, id).toBeTruthy();
    }
  });
});

describe('methods', () => {
  it('defines the symbols with their units and codes', () => {
    const lop = columns({
      answer: 'occlusion-pressure',
      equation: 'thigh-2019',
      limb: 'leg',
      posture: 'supine',
      cuffWidthCm: 18,
      circumferenceCm: [54, null, 500],
      systolicMmHg: 120,
      diastolicMmHg: 70,
      ageYears: 30,
      sex: 'male',
    });
    const text = methods(lop);
    expect(text).toMatch(/SBP, systolic[^;]* \[mmHg\]/);
    expect(text).toMatch(/sex, [^;]*: 1 male, 2 female/);
    expect(text).toContain('computed for 1 rows; 1 were missing a value and 1 were refused.');
  });

  it('covers every statistic, with n, missing, draws and seed, and the bibliography its publications', () => {
    const measured = [150, 160, 170, 180, 190, 165, null, 175, 172, 181, 158, 169];
    const estimated = measured.map((value, row) => (value ?? 160) + (row % 3));
    const rows = measured.filter((value) => value !== null);
    const used = [
      agreement(measured, estimated),
      reliability([rows, rows.map((value, row) => value + ((row * 7) % 5))]),
      propagate({
        inputs: { systolicMmHg: { value: 120, standardDeviation: 5 } },
        pipeline: ({ systolicMmHg }) =>
          estimateOcclusionPressure({
            limb: 'leg',
            circumferenceCm: 55,
            systolicMmHg,
            diastolicMmHg: 70,
            cuffWidthCm: 10,
            posture: 'supine',
          }),
        draws: 500,
        seed: 7,
      }),
      bootstrap({ rows, statistic: (drawn) => drawn.reduce((sum, value) => sum + value, 0), draws: 300, seed: 9 }),
    ];
    const text = methods(used);
    expect(text).toContain('n = 11 pairs; 1 row left out');
    expect(text).toContain('n = 11 people with 2 tests; 0 people left out');
    expect(text).toContain('500 draws of the Mersenne Twister MT19937, seed 7, 0 refused');
    expect(text).toContain('300 draws of the Mersenne Twister MT19937, seed 9, 0 refused');
    expect(text).not.toMatch(/undefined|unknown|NaN|\{/);
    const keys = [...text.matchAll(/\[([a-z0-9, -]+)\]/g)].flatMap(([, list]) => list!.split(', '));
    const ids = bibliography(used, { format: 'csl-json' }).map(({ id }) => id as string);
    expect(new Set(keys)).toEqual(new Set(ids));
    expect(ids).toEqual(
      expect.arrayContaining(['agreement-1986', 'intraclass-1979', 'mersenne-twister-1998', 'cuffwork']),
    );
    const fit = methods(fittedExample);
    expect(fit).toContain('The equation lab-thigh was fitted by ordinary least squares');
    expect(fit).not.toMatch(/undefined|NaN/);
  });

  it('covers a plan and one’s own equation', () => {
    expect(plan.equations.length).toBeGreaterThan(1);
    for (const equation of plan.equations) expect(methods(plan)).toContain(equation);
    const person = {
      limb: 'leg',
      circumferenceCm: 55,
      systolicMmHg: 120,
      diastolicMmHg: 70,
      cuffWidthCm: 11,
      posture: 'seated',
      ageYears: 30,
      sex: 'male',
    } as const;
    expect(methods(estimateWith(fittedExample, person))).toContain('lab-thigh (LOP = ');
  });
});

describe('on golden pages', () => {
  it('publications of every kind, in both formats', async () => {
    const used = {
      sources: ['limb-circumference-2015', 'femoral-repeat', 'flow-steps-2018', 'ucum', 'exercise-shift-2018'],
    };
    const records = bibliography(used, { format: 'csl-json' });
    const page = `${bibliography(used, { format: 'bibtex' })}\n${JSON.stringify(records, null, 2)}\n`;
    await expect(page.replaceAll(version, 'x.y.z')).toMatchFileSnapshot('pages/bibliography.txt');
  });

  it('how each kind of number was made', async () => {
    const leg = { limb: 'leg', circumferenceCm: 54, systolicMmHg: 120, diastolicMmHg: 70, posture: 'supine' } as const;
    const occlusion = estimateOcclusionPressure({ ...leg, cuffWidthCm: 10, equation: 'width-ratio-1993' });
    const own = estimateWith(fittedExample, { ...leg, cuffWidthCm: 11, posture: 'seated', ageYears: 30, sex: 'male' });
    // Only an occlusion pressure that no publication stands behind is of your own equation.
    const { ownEquation: _, ...published } = own;
    const column = columns({ answer: 'one-repetition-maximum', equation: 'epley-1985', load: [100], repetitions: 5 });
    const used = [targetCuffPressure({ occlusion, percentLop: 50 }), own, published, column, []];
    const page = used.map((one) => `${methods(one)}\n`).join('\n');
    await expect(page.replaceAll(version, 'x.y.z')).toMatchFileSnapshot('pages/methods.txt');
    expect(methods([column, column.about])).toBe(methods(column));
  });

  it.each([
    [{ format: 'ris' }, 'not-one-of', '"ris"'],
    [undefined, 'missing', 'undefined'],
    [{}, 'missing', 'undefined'],
  ])('no other format, case %#', (options, code, received) => {
    const call = (given: unknown) => bibliography({ sources: [] }, given as never);
    expect(refusal(call, options)).toEqual([['format', code, "one of 'bibtex', 'csl-json'", received]]);
  });

  it('nothing of what is no answer, and of sources there are not', () => {
    const one = testedOneRepMax({ load: 100 });
    const nothing = methods([]);
    for (const change of [{ kind: 'other' }, { kind: 5 }, { equation: 5 }, { assumptions: null }, { evidence: 'good' }])
      expect(methods({ ...one, ...change })).toBe(nothing);
    expect(methods({ ...one, sources: ['of-a-newer-version'] })).toBe(methods(one));
    expect(methods({ parts: [one, { deep: one }], none: null })).toBe(methods(one));
    expect(refusal(methods, 5 as never)[0]![2]).toBe(
      'an answer, a plan, or anything that holds answers, as plain JSON',
    );
  });
});

/** Public functions of `cuffwork/study` that yield a statistic, with what its sentence says and a publication it cites. */
const statistics: Readonly<Record<string, readonly [sentence: RegExp, source: string]>> = {
  agreement: [/Agreement \(n = 6 pairs; 0 rows left out/, 'agreement-1986'],
  'agreement, by person': [/Agreement on the logarithms \(n = 6 pairs of 3 people/, 'repeated-agreement-2013'],
  reliability: [/Reliability on the logarithms \(n = 6 people with 2 tests/, 'intraclass-1996'],
  fitOcclusionEquation: [/lab-thigh was fitted by .* HC3, influence is Cook’s distance/, 'robust-errors-1985'],
  recalibrateOcclusionEquation: [/lab-2019 was recalibrated from thigh-2019/, 'updating-2004'],
  propagate: [/Monte Carlo \(100 draws/, 'guide-uncertainty-2008'],
  bootstrap: [/Intervals of 6 rows are .* bootstrap intervals \(200 draws/, 'bootstrap-1987'],
  crossValidate: [/cross-validated \(n = 6 rows; 3 folds; seed 1\)/, 'mersenne-twister-1998'],
  conformal: [/conformal prediction intervals on the logarithms \(n = 20 people/, 'conformal-2018'],
};
/** Those that yield answers, or a number to plan with. */
const others = [
  'columns',
  'compareColumns',
  'eachRow',
  'equationFromFit',
  'estimateWith',
  'flagCodes',
  'pairsForLimits',
  'reachedColumns',
];

// Fails where a function is added without a sentence, or a field is renamed by which its result is known.
describe('methods of every statistic of `cuffwork/study`', () => {
  it('has every public function in one list', () => {
    const functions = Object.entries(study).flatMap(([name, value]) => (typeof value === 'function' ? [name] : []));
    const listed = [...Object.keys(statistics).filter((name) => !name.includes(',')), ...others];
    expect(functions.sort()).toEqual(listed.sort());
  });
  it.each(Object.entries(statistics))('%s', (name, [sentence, source]) => {
    const { call, right } = publicCalls[name]!;
    const result = call(...(right as never[])) as object;
    // Also as it was stored and read back, and inside a document.
    for (const used of [result, JSON.parse(JSON.stringify({ results: [result] })) as object]) {
      const text = methods(used);
      expect(text).toMatch(sentence);
      expect(text).not.toMatch(/undefined|unknown|not reported|NaN/);
      expect(bibliography(used, { format: 'csl-json' }).map(({ id }) => id)).toContain(source);
    }
  });
});

describe('column answers', () => {
  it('are taken as they are, alone and in lists', () => {
    const lop = columns({
      answer: 'occlusion-pressure',
      equation: 'thigh-2015',
      limb: 'leg',
      posture: 'supine',
      cuffWidthCm: 5,
      circumferenceCm: [54],
      systolicMmHg: 120,
      diastolicMmHg: 70,
    });
    const options = { format: 'bibtex' } as const;
    expect(bibliography(lop, options)).toBe(bibliography(lop.about, options));
    expect(bibliography([lop, lop.about], options)).toBe(bibliography(lop.about, options));
    // The rows are counted; apart from that the words are those of `about`.
    expect(methods(lop)).toContain('computed for 1 rows; 0 were missing a value and 0 were refused.');
    expect(methods(lop).replace(/ It was computed for [^.]*\./, '')).toBe(methods(lop.about));
  });
});
