import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

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

/**
 * How many of these words the parts that are not rewritten yet still have. The counts are exact: they go down with
 * every page that is rewritten, never up. What is not named here has none.
 */
const allowed: Readonly<Record<string, number>> = {
  'docs/documents.md': 1,
  'docs/how-wrong-is-it.md': 32,
  'docs/maintainers/mutation.md': 5,
  'docs/maintainers/robustness.md': 3,
  'src/answer': 21,
  'src/evidence': 5,
  'src/plan': 87,
  'src/pressure': 46,
  'src/quantity': 1,
  'src/session': 16,
  'src/study': 22,
  'src/text': 30,
};

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
      parts.set(node.getStart(), node.text);
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

/** A page without what its examples print and what is made from the code: those are sentences of the library, and counted there. */
const page = (file: string): string =>
  readFileSync(file, 'utf8')
    .replaceAll(/^```text\n[\s\S]*?^```/gm, '')
    .replaceAll(/<!-- made: [\s\S]*?<!-- end -->/g, '');

/** Each page, and each folder of the library, with its text. */
const places: ReadonlyMap<string, string> = new Map([
  ...['README.md', ...under('docs', '.md').filter((file) => !file.startsWith(join('docs', 'site')))].map(
    (file) => [file, page(file)] as const,
  ),
  ...readdirSync('src').map((name) => {
    const at = join('src', name);
    const files = statSync(at).isDirectory() ? under(at, '.ts') : [at];
    return [at, files.map(textsOf).join('\n')] as const;
  }),
]);

const found = (text: string): string[] =>
  words.flatMap(([word]) => [...text.replaceAll(/\s+/g, ' ').matchAll(new RegExp(word, 'gi'))].map(([hit]) => hit));

describe('words of plain English', () => {
  it('are searched for in every page and in the comments and texts of the library', () => {
    expect(found('Whoever\nlets it: at\nhand, one’s own, the weights there are')).toHaveLength(4);
    expect(places.get(join('src', 'plan'))).toContain('This plan is arithmetic.');
    expect(places.size).toBeGreaterThan(20);
  });
  it.each([...places])('%s has no more of the others than is left to rewrite', (place, text) => {
    const hits = found(text);
    expect(hits.length, `lower the count to ${hits.length}, or write otherwise: ${hits.join(', ')}`).toBe(
      allowed[place] ?? 0,
    );
  });
  it('names only places that exist', () => expect(Object.keys(allowed).filter((at) => !places.has(at))).toEqual([]));
});

/** Pages that are rewritten: short sentences that speak to the reader. */
const rewritten = [
  'README.md',
  'docs/README.md',
  'docs/cautions.md',
  'docs/occlusion-pressure.md',
  'docs/rehabilitation-to-performance.md',
  'docs/counting-exposure.md',
  ...under(join('docs', 'course'), '.md'),
];

/** Prose of a page by sentences: no code, tables, quotes of the code, pictures or addresses. */
const sentences = (file: string): string[] =>
  readFileSync(file, 'utf8')
    .replaceAll(/^```[\s\S]*?^```/gm, '')
    .replaceAll(/<!-- made: [\s\S]*?<!-- end -->/g, '')
    .replaceAll(/^(?:\||!\[).*$/gm, '')
    .replaceAll(/\]\([^)]*\)/g, ']')
    .replaceAll(/\([^()]*\d{4}[^()]*\)/g, '')
    .split(/\n+|(?<=[.!?:;])\*{0,2} /)
    .map((sentence) => sentence.trim())
    .filter(Boolean);
const count = (text: string): number => text.split(/\s+/).filter((word) => /\p{L}|\d/u.test(word)).length;

describe.each(rewritten)('%s', (file) => {
  it('has at most 25 words a sentence', () => {
    expect(sentences(file).length).toBeGreaterThan(10);
    expect(sentences(file).filter((sentence) => count(sentence) > 25)).toEqual([]);
  });
  it('says “you” at least 8 times in a thousand words', () => {
    const text = sentences(file).join(' ');
    expect((1000 * [...text.matchAll(/\byour?\b/gi)].length) / count(text)).toBeGreaterThanOrEqual(8);
  });
});
