import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };

describe('npm publish --dry-run', () => {
  it('would publish the package under its name and version', () => {
    // Its own gates are these very tests, so they are not run once more.
    const message = execFileSync('npm', ['publish', '--dry-run', '--json', '--ignore-scripts'], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const { [manifest.name]: nested, ...flat } = JSON.parse(message) as Record<string, any>;
    const { id, files } = nested ?? flat;
    expect(id).toBe(`${manifest.name}@${manifest.version}`);
    expect(files.length).toBeGreaterThan(50);
  });
});
