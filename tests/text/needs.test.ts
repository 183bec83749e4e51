import { describe, expect, it } from 'vitest';
import * as answer from '../../src/answer/needs.js';
import * as plan from '../../src/plan/needs.js';
import * as pressure from '../../src/pressure/needs.js';
import * as session from '../../src/session/needs.js';
import * as strength from '../../src/strength/needs.js';
import * as study from '../../src/study/needs.js';
import * as text from '../../src/text/needs.js';
import { words } from '../../src/text/index.js';

describe('what inputs are asked for', () => {
  const layers = { answer, plan, pressure, session, strength, study, text };
  it.each(Object.entries(layers))('every constant of %s has its words, so that each is translated', (_, constants) => {
    const needs = Object.values<unknown>(constants).filter((one): one is answer.Need => Array.isArray(one));
    expect(needs.length).toBeGreaterThan(5);
    for (const [code, english] of needs) expect(words).toHaveProperty([`requirement.${code}`], english);
  });
});
