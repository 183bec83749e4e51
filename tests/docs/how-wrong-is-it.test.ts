import { readFileSync } from 'node:fs';
import { format } from 'prettier';
import { describe, expect, it } from 'vitest';
import { page } from '../../docs/working/how-wrong-is-it.js';

describe('docs/how-wrong-is-it.md', () => {
  it('is what the committed script writes', async () => {
    const { prettier } = JSON.parse(readFileSync('package.json', 'utf8')) as { prettier: object };
    await expect(await format(page, { ...prettier, parser: 'markdown' })).toMatchFileSnapshot(
      '../../docs/how-wrong-is-it.md',
    );
  });
});
