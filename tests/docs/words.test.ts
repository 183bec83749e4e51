import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { messages, words as libraryWords } from '../../src/text/index.js';

/** Words that a reader of plain English stumbles over, each with what to write instead. */
const words: readonly (readonly [RegExp, string])[] = [
  [/\btold\b/, 'found, reported, listed'],
  [/\bsaid\b/, 'given, reported'],
  [/\bat hand\b/, 'not reported (by the paper), not checked (by us)'],
  [/\btaken for granted\b/, 'assumption'],
  [/\bin circulation\b/, 'in use'],
  [/\bhonest\b/, 'expected (of an error)'],
  [/\bbeside\b/, 'compared with, together with'],
  [/\bheld to\b/, 'compared with'],
  [/\bcomes to\b/, 'is, equals'],
  [/\bstands\b/, 'is'],
  [/\bwhoever\b/, 'you'],
  [/\bone[’']s own\b/, 'your own'],
  [/\bwhat it is not\b/, 'what it does not mean'],
  [/\bthe \w+ there (?:is|are)\b/, 'the available …'],
  [/\bthe callers?\b/, 'you'],
  [/\blet(?:ting)? the cuffs? down\b/, 'deflate'],
  [/\bmay really be\b/, '95 % interval'],
  [/\bwhat the gym has\b/, 'loads you can set'],
  [/\bnothing was shifted\b/, 'no adjustment made'],
  [/\brefused with everything\b/, 'throws an InputError that lists every problem'],
  [/\bfolds measurements\b/, 'updates an estimate'],
  [/\bclears? (?:no one|nobody)\b/, 'does not give medical clearance'],
  [/\bholds the setting below\b/, 'limited to'],
  [/\b(?:rungs?|ladder)\b/, 'stage, progression'],
  [/\bholds its mean down\b/, 'so the mean is an underestimate'],
  [/\bpeople far apart\b/, 'with large differences between people'],
  [/\bsays? nothing of\b/, 'you cannot estimate'],
  [/\bin the text that was read\b/, 'we found no published one'],
  [/\bforetold\b/, 'predicted'],
];

/** A literal of one word is a code or a name, not a sentence. */
const isName = (text: string): boolean => /^[\w.-]*$/.test(text);

/** Comments and texts of a module, without its names. */
function textsOf(file: string): string {
  const text = readFileSync(file, 'utf8');
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const parts = new Map<number, string>();
  const visit = (node: ts.Node): void => {
    const comments = [
      ...(ts.getLeadingCommentRanges(text, node.pos) ?? []),
      ...(ts.getTrailingCommentRanges(text, node.end) ?? []),
    ];
    for (const { pos, end } of comments) parts.set(pos, text.slice(pos, end));
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) {
      if (!isName(node.text)) parts.set(node.getStart(), node.text);
    }
    // The tokens too: a comment before a closing bracket belongs to no other node.
    for (const child of node.getChildren()) if (!ts.isJSDoc(child)) visit(child);
  };
  visit(source);
  return [...parts.values()].join('\n');
}

const under = (folder: string, ending: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .map((name) => join(folder, name));

/** A page without what its examples print and what is made from the library: those texts are counted there. */
const page = (file: string): string =>
  readFileSync(file, 'utf8')
    .replaceAll(/^```text\n[\s\S]*?^```/gm, '')
    .replaceAll(/<!-- made: [\s\S]*?<!-- end -->/g, '');

/** Each page, and each folder of the library, with its text. */
const places: ReadonlyMap<string, string> = new Map([
  ...['README.md', ...under('docs', '.md').filter((file) => !/^docs.(site|stories)/.test(file))].map(
    (file) => [file, page(file)] as const,
  ),
  ...readdirSync('src').map((name) => {
    const at = join('src', name);
    const files = statSync(at).isDirectory() ? under(at, '.ts') : [at];
    return [at, files.map(textsOf).join('\n')] as const;
  }),
  // What makes the docs, with the stories and exercises in it, and the working behind the numbers.
  ...[join('docs', 'tools'), join('docs', 'working')].map(
    (at) => [at, under(at, '.ts').map(textsOf).join('\n')] as const,
  ),
]);

const found = (text: string): string[] =>
  words.flatMap(([word]) =>
    [...text.replaceAll(/\{\w+\}|\s+/g, ' ').matchAll(new RegExp(word, 'gi'))].map(([hit]) => hit),
  );

describe('words of plain English', () => {
  it('are searched for in every page and in the comments and texts of the library', () => {
    expect(found('Whoever\nlets it: at\nhand, one’s own, the weights there are')).toHaveLength(4);
    expect(places.get(join('src', 'plan'))).toContain('This plan is arithmetic.');
    expect(places.size).toBeGreaterThan(20);
  });
  it.each([...places])('%s has none of the others', (_place, text) => expect(found(text)).toEqual([]));
});

/** Every page for readers; the pages for maintainers are left out. */
const readers = ['README.md', ...under('docs', '.md').filter((file) => !/^docs.(site|maintainers)/.test(file))];
/** The README and the guides, which speak to the reader; a story is made of printed pages. */
const guides = readers.filter((file) => !/^docs.(course|stories)/.test(file));

/** Prose of a page by sentences: no code, tables, formulas, quotes of the code, pictures or addresses. */
const sentences = (file: string): string[] =>
  readFileSync(file, 'utf8')
    .replaceAll(/^```[\s\S]*?^```/gm, '')
    .replaceAll(/<!-- made: [\s\S]*?<!-- end -->/g, '')
    .replaceAll(/^(?:\||!\[|Formula: ).*$/gm, '')
    .replaceAll(/\]\([^)]*\)/g, ']')
    .replaceAll(/\([^()]*\d{4}[^()]*\)/g, '')
    .split(/\n+|(?<=[.!?])\*{0,2} /)
    .map((sentence) => sentence.trim())
    .filter(Boolean);
const count = (text: string): number => text.split(/\s+/).filter((word) => /\p{L}|\d/u.test(word)).length;

/** Sentences of a catalogue that are longer, with their number of words. The list for screening is one sentence. */
const longer: Readonly<Record<string, number>> = { 'screen-first': 52 };

it('has at most 25 words in each sentence of the library', () => {
  const long = Object.entries({ ...messages, ...libraryWords }).flatMap(([code, text]) =>
    text
      .split(/(?<=[.!?:;])\s/)
      .map((sentence) => [code, count(sentence)] as const)
      .filter(([, size]) => size > 25),
  );
  expect(long).toEqual(Object.entries(longer));
});

/** Printed lines of stories that are longer, with their number of words: a list of answers, a note of the library. */
const longerOfPages: Readonly<Record<string, readonly number[]>> = {
  [join('docs', 'stories', 'shoulder.md')]: [26],
  [join('docs', 'stories', 'tendon.md')]: [35],
};
const yous = (text: string): number => [...text.matchAll(/\byours?\b|\byou\b/gi)].length;

describe('pages for readers', () => {
  it('are found', () => expect(readers.length).toBeGreaterThan(25));
  it.each(readers)('%s has at most 25 words in each sentence', (file) => {
    const long = sentences(file)
      .map(count)
      .filter((size) => size > 25);
    expect(
      long,
      sentences(file)
        .filter((sentence) => count(sentence) > 25)
        .join('\n'),
    ).toEqual(longerOfPages[file] ?? []);
  });
  it.each(readers)('%s speaks to the reader', (file) => expect(yous(sentences(file).join(' '))).toBeGreaterThan(0));
  it('say “you” at least 8 times in a thousand words, README and guides taken together', () => {
    const text = guides.flatMap(sentences).join(' ');
    expect((1000 * yous(text)) / count(text)).toBeGreaterThanOrEqual(8);
  });
});
