import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

const pages = [
  ...readdirSync('.').filter((name) => name.endsWith('.md')),
  join('.github', 'SECURITY.md'),
  ...readdirSync('docs', { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(md|txt)$/.test(name) && !name.startsWith('site'))
    .map((name) => join('docs', name)),
];

/** Text without its code, where brackets are not links. */
const prose = (file: string): string =>
  readFileSync(file, 'utf8')
    .replaceAll(/^```[\s\S]*?^```/gm, '')
    .replaceAll(/`[^`\n]*`/g, (code) => code.replaceAll(/[[\]()]/g, ' '));

/** The anchor that a heading gets where the pages are shown. */
const anchor = (heading: string): string =>
  heading
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}\s_-]/gu, '')
    .trim()
    .replaceAll(' ', '-');
const anchors = (file: string): string[] =>
  [...prose(file).matchAll(/^#{1,6} (.*)$/gm)].map(([, heading]) => anchor(heading!));

const links = pages.flatMap((file) =>
  [...prose(file).matchAll(/\[[^\]]*\]\(([^)\s]+)\)/g)].map(([, target]) => ({ file, target: target! })),
);
const own = links.filter(({ target }) => !/^https?:/.test(target));

/** What is wrong with a link, if anything. */
function wrong({ file, target }: { readonly file: string; readonly target: string }): string | undefined {
  const [path, hash] = target.split('#');
  const to = path ? join(dirname(file), path) : file;
  if (!existsSync(to)) return `${file}: ${target} leads nowhere`;
  if (relative('.', to).startsWith('..')) return `${file}: ${target} leads out of the project`;
  if (hash === undefined) return undefined;
  return statSync(to).isFile() && anchors(to).includes(hash) ? undefined : `${file}: ${target} has no such heading`;
}

describe('links of the pages', () => {
  it('are found', () => {
    expect(pages.length).toBeGreaterThan(10);
    expect(own.length).toBeGreaterThan(40);
  });
  it('lead to what is there', () => expect(own.flatMap((link) => wrong(link) ?? [])).toEqual([]));
  it('would be found broken', () => {
    expect(wrong({ file: 'README.md', target: 'docs/none.md' })).toContain('nowhere');
    expect(wrong({ file: 'README.md', target: 'docs/glossary.md#none' })).toContain('no such heading');
  });
  it('of other hosts are https, to identifiers that do not move', () => {
    const others = links.filter(({ target }) => /^https?:/.test(target)).map(({ target }) => target);
    for (const target of others)
      expect(target).toMatch(/^https:\/\/(doi\.org\/10\.|www\.iso\.org\/|keepachangelog\.com|semver\.org|ucum\.org)/);
  });
  it('join every guide to the front page of the docs', () => {
    const front = readFileSync('docs/README.md', 'utf8');
    // Pages for maintainers are not in the package: the page for developers has them.
    const developers = readFileSync('DEVELOPERS.md', 'utf8');
    for (const file of pages.filter(
      (name) => /^docs\/((course|maintainers)\/)?[\w-]+\.md$/.test(name) && name !== 'docs/README.md',
    )) {
      const at = file.includes('/maintainers/') ? `](${file})` : `](${file.slice('docs/'.length)})`;
      expect(file.includes('/maintainers/') ? developers : front, `${file} is not linked`).toContain(at);
    }
  });
});

describe('commands that the pages give', () => {
  const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: object };
  // The changelog may tell of what is gone.
  const given = pages
    .filter((file) => file !== 'CHANGELOG.md')
    .flatMap((file) =>
      [...readFileSync(file, 'utf8').matchAll(/npm run ([\w:]+)|(?:\.ci\/\w+|tests\/[\w./-]+\.ts)/g)].map(
        ([words, script]) => ({
          place: `${file}: ${words}`,
          there: script ? Object.hasOwn(scripts, script) : existsSync(words),
        }),
      ),
    );
  it('are there', () => {
    expect(given.length).toBeGreaterThan(40);
    expect(given.filter(({ there }) => !there).map(({ place }) => place)).toEqual([]);
  });
});
