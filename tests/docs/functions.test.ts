import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as core from '../../src/index.js';
import * as plan from '../../src/plan/index.js';
import * as schemas from '../../src/schemas.js';
import * as study from '../../src/study/index.js';
import * as text from '../../src/text/index.js';

const page = readFileSync('docs/README.md', 'utf8');

describe('the page of the docs that promises all functions', () => {
  it.each(Object.entries({ core, plan, schemas, study, text }))('names every export of %s', (_, entry) => {
    expect(Object.keys(entry).filter((name) => !page.includes(`\`${name}\``))).toEqual([]);
  });
});
