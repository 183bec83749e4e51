import { guides } from './guides.js';
import { entryPoints, publicNames, type PublicName } from './public-names.js';

/** Markdown to one plain line. */
const line = (markdown: string): string =>
  markdown
    .replaceAll(/\{@link (\w+)\}/g, '$1')
    .replaceAll(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replaceAll(/\s+/g, ' ')
    .trim();

const callable = (names: readonly PublicName[]): PublicName[] => names.filter(({ kind }) => kind !== 'type');

/** `llms.txt`: what is in the library, one line each, for a language model that reads before it codes. */
export function index(): string {
  const names = publicNames();
  return [
    '# cuffwork',
    '',
    '> Restriction training in numbers, as pure TypeScript functions: occlusion pressure, cuff pressure, loads, sessions and exposure, each with its 95 % interval, evidence grade and source. cuffwork calculates. It does not give medical clearance.',
    '',
    'Every function takes one plain object with the unit in each field’s name, and returns plain JSON. Invalid input throws an InputError that lists every problem and its likely cause. The whole text of the guides and of every function is in llms-full.txt, which `npm run docs` writes next to this file in docs/site.',
    '',
    '## Guides',
    '',
    ...guides.map(
      ({ file, title, about }) =>
        `- [${title}](${file.startsWith('docs/') ? file.slice(5) : `../${file}`}): ${line(about)}`,
    ),
    ...[...entryPoints.keys()].flatMap((entry) => [
      '',
      `## ${entry}`,
      '',
      ...callable(names)
        .filter((name) => name.entry === entry)
        .map(({ name, summary, file: place }) => `- [${name}](../${place}): ${line(summary)}`),
    ]),
    '',
  ].join('\n');
}

/** The same at full length: each guide, and the doc comment and signature of every function. */
export function fullText(): string {
  const names = publicNames();
  return [
    index().split('## Guides')[0]!.trim(),
    ...guides.map(({ text }) => text.trim()),
    ...[...entryPoints.keys()].flatMap((entry) => [
      `# ${entry}`,
      ...callable(names)
        .filter((name) => name.entry === entry)
        .map(({ name, signature, comment }) => `## ${name}\n\n${signature && `    ${signature}\n\n`}${comment}`),
    ]),
  ].join('\n\n');
}
