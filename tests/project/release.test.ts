import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { changelogComplaints } from '../support/changelog.js';

const read = (file: string) => readFileSync(file, 'utf8');
const manifest = JSON.parse(read('package.json')) as Record<string, any>;
const version = manifest['version'] as string;

describe('CITATION.cff', () => {
  const fields = new Map(
    [...read('CITATION.cff').matchAll(/^([a-z-]+): (.*)$/gm)].map(([, name, value]) => [name, value]),
  );
  it('is in step with package.json', () => {
    expect(fields.get('version')).toBe(version);
    expect(fields.get('license')).toBe(manifest['license']);
    expect(fields.get('title')).toContain(manifest['name']);
  });
  // Citation File Format 1.2.0: the fields that it requires.
  it.each(['cff-version', 'message', 'title'])('has %s', (name) => expect(fields.get(name)).toBeTruthy());
});

describe('CHANGELOG.md', () => {
  it('is in order', () => expect(changelogComplaints(read('CHANGELOG.md'), version)).toEqual([]));

  const good = `# Changelog

Words.

## Unreleased

### Changed values

- None.

## 1.10.0 - 2030-02-28

### Added

- A thing.

### Changed values

- The error of one equation, 10 to 11 mmHg.

## 1.9.1 - 2030-01-31

### Fixed

- A thing.

### Changed values

- None.
`;
  it('may be this', () => expect(changelogComplaints(good, '1.10.0')).toEqual([]));

  // Each of these breaks one rule, so that a lint that sees nothing cannot pass.
  it.each([
    ['a date that there is not', good.replace('2030-02-28', '2030-02-30'), 'neither Unreleased nor a version'],
    ['a date in another form', good.replace('2030-02-28', '28.2.2030'), 'neither Unreleased nor a version'],
    ['a heading of its own', good.replace('### Fixed', '### Repaired'), '“Repaired” is none of'],
    ['an empty heading', good.replace('- A thing.\n\n### Changed', '### Changed'), 'is empty'],
    ['nothing said of numbers', good.replace(/### Changed values\n\n- None.\n$/, ''), 'does not say which values'],
    ['a number moved by a patch', good.replace(/- None.\n$/, '- One.\n'), 'a patch moves no number'],
    ['versions upside down', good.replace('1.10.0', '1.8.0'), 'newest first'],
    ['dates upside down', good.replace('2030-01-31', '2031-01-31'), 'dates must not rise'],
    ['a version ahead of the package', good.replace('1.10.0', '2.0.0'), 'newer than the package'],
    [
      'a version behind the package',
      good.replace(/## Unreleased[\s\S]*?(?=## 1.10)/, '').replace('1.10.0', '1.9.9'),
      'the package is at 1.10.0',
    ],
    ['Unreleased below', `${good}\n## Unreleased\n\n### Changed values\n\n- None.\n`, 'must come first'],
    ['loose text', good.replace('- A thing.', 'A thing.'), 'neither a heading nor an entry'],
    ['another beginning', good.replace('# Changelog', '# News'), 'must begin'],
  ])('may not have %s', (_name, text, complaint) => {
    expect(changelogComplaints(text, '1.10.0').join('\n')).toContain(complaint);
  });
});

describe('package.json', () => {
  it('runs nothing when it is installed', () => {
    // npm runs these on a machine that installs the package.
    for (const script of ['preinstall', 'install', 'postinstall', 'prepare', 'preprepare', 'postprepare'])
      expect(manifest['scripts']).not.toHaveProperty(script);
  });
  it('has two runtime dependencies', () => {
    expect(Object.keys(manifest['dependencies'])).toEqual(['decimal.js', 'zod']);
    for (const kind of ['peerDependencies', 'optionalDependencies', 'bundleDependencies'])
      expect(manifest).not.toHaveProperty(kind);
  });
  it('publishes with a statement of provenance, and not before every gate was passed', () => {
    // A dry run does not mind a private package.
    expect(manifest).not.toHaveProperty('private');
    expect(manifest['publishConfig']).toEqual({ access: 'public', provenance: true });
    expect(manifest['scripts'].prepublishOnly).toBe('npm test && npm run verify');
  });
});
