/*
 * What in the docs is made from the code: pictures, tables and llms.txt. `npm run pictures` writes all of it, and
 * tests/docs/made.test.ts holds the committed files to it.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { format, resolveConfig } from 'prettier';
import { sheet } from './exercises.js';
import { index } from './llms.js';
import { pictures } from './pictures.js';
import { pictureWords } from './slides.js';
import {
  afterwards,
  askFirstList,
  coverageTable,
  maximumCards,
  occlusionCards,
  occlusionTable,
  oneRepMaxTable,
  publicationsList,
  referList,
  screenFirst,
  stopCriteria,
} from './tables.js';

const drawn = new Map(pictures());
/** What a picture says, folded under it: for who cannot see it, or wants its numbers. */
const inWords = (name: string) => (): string =>
  `<details>\n\n<summary>The picture in words</summary>\n\n${pictureWords(drawn.get(name)!)}\n\n</details>`;

/** Files that a page quotes as they stand. */
const RECIPES = 'examples/recipes';
const recipes = readdirSync(RECIPES).map((file): [string, () => string] => {
  const language = extname(file).slice(1).replace('mjs', 'js');
  // With its name behind the language it is no example to run in passing: it has a test of its own.
  const quoted = () => `\`\`\`${language} ${RECIPES}/${file}\n${readFileSync(join(RECIPES, file), 'utf8')}\`\`\``;
  return [`recipe ${file}`, quoted];
});

/** Parts of hand-written pages that are made: `<!-- made: name -->` to `<!-- end -->`. */
const parts: Readonly<Record<string, () => string>> = {
  'occlusion equations': occlusionTable,
  'maximum equations': oneRepMaxTable,
  'occlusion cards': occlusionCards,
  'maximum cards': maximumCards,
  publications: publicationsList,
  'screen first': screenFirst,
  refer: referList,
  'ask first': askFirstList,
  'stop criteria': stopCriteria,
  afterwards,
  'coverage of agreement': () => coverageTable('agreement'),
  'coverage of your own equation': () => coverageTable('equation'),
  // The seed is the year of the course.
  exercises: () => sheet(2026),
  'true-percent in words': inWords('true-percent'),
  'session-timeline in words': inWords('session-timeline'),
  'pressure-by-width in words': inWords('pressure-by-width'),
  'maximum-by-equation in words': inWords('maximum-by-equation'),
  ...Object.fromEntries(recipes),
};
const pages = [
  'README.md',
  'docs/cautions.md',
  'docs/choosing-an-equation.md',
  'docs/publications.md',
  'docs/for-research.md',
  'docs/course/exercises.md',
  'docs/course/a-session.md',
  'docs/equations.md',
  'docs/pressure.md',
  'docs/recipes.md',
];

const withParts = (text: string, put: Set<string>): string =>
  text.replace(/(<!-- made: (.*?) -->\n)[\s\S]*?(<!-- end -->)/g, (_all, head: string, name: string, end: string) => {
    put.add(name);
    return `${head}\n${parts[name]!()}\n\n${end}`;
  });

/** Every made file with the text it should have. */
export async function made(): Promise<ReadonlyMap<string, string>> {
  const files = new Map<string, string>();
  const put = new Set<string>();
  for (const file of pages) {
    const text = withParts(readFileSync(file, 'utf8'), put);
    files.set(file, await format(text, { ...(await resolveConfig(file)), filepath: file }));
  }
  for (const name of Object.keys(parts)) if (!put.has(name)) throw new Error(`no page has a place for: ${name}`);
  for (const [name, svg] of drawn) files.set(`docs/pictures/${name}.svg`, svg);
  files.set('docs/llms.txt', index());
  return files;
}
