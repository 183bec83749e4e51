import { readFileSync } from 'node:fs';
import { format } from 'prettier';
import { describe, expect, it } from 'vitest';
import { appendix, page } from '../../docs/working/how-wrong-is-it.js';

describe.each([
  ['docs/how-wrong-is-it.md', page],
  ['docs/how-wrong-appendix.md', appendix],
])('%s', (file, text) => {
  it('is what the committed script writes', async () => {
    const { prettier } = JSON.parse(readFileSync('package.json', 'utf8')) as { prettier: object };
    await expect(await format(text, { ...prettier, parser: 'markdown' })).toMatchFileSnapshot(`../../${file}`);
  });
});
