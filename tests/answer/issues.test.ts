import { runInThisContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import {
  addIssue,
  describe as shown,
  gather,
  InputError,
  issue,
  isInputError,
  within,
} from '../../src/answer/issues.js';
import { A_FORM } from '../../src/answer/needs.js';
import { attempt } from '../../src/index.js';

const one = (path: readonly (string | number)[] = ['load']) => issue('wrong-type', path, A_FORM, 'x');
const many = (count: number) => Array.from({ length: count }, (_, index) => one(['list', index]));
const thrown = (call: () => unknown): unknown => {
  try {
    call();
  } catch (error) {
    return error;
  }
  throw new Error('nothing was thrown');
};

describe('an input error', () => {
  it('lists a hundred issues, and counts the others', () => {
    const error = new InputError(many(103), 4);
    expect([error.issues.length, error.more]).toEqual([100, 7]);
    const lines = error.message.split('\n');
    expect(lines).toHaveLength(101);
    expect(lines.at(-1)).toMatch(/\b7\b/);
    const few = new InputError(many(2));
    expect([few.issues.length, few.more, few.message.split('\n').length]).toEqual([2, 0, 2]);
    expect(few.name).toBe('InputError');
    expect(few.constructor.name).toBe('InputError');
  });

  /** A call from a file at some path. */
  const from = (filename: string) =>
    runInThisContext('(function called(fn) { return fn(); })', { filename }) as <T>(fn: () => T) => T;

  it('has a stack of its message and of your calls, without those within the package', () => {
    const files = ['/app/node_modules/cuffwork/dist/core.js', 'C:\\app\\cuffwork\\dist\\core.cjs', '/app/yours.js'];
    const error = files.reduce<() => InputError>(
      (make, file) => () => from(file)(make),
      () => new InputError([issue('wrong-type', ['of /cuffwork/dist/'], A_FORM, 'x'), one()]),
    )();
    const lines = error.stack!.split('\n');
    expect(lines.slice(0, 2).join('\n')).toBe(`InputError: ${error.message}`);
    // The message may name such a file, the frames do not.
    expect(lines[0]).toContain('/cuffwork/dist/');
    const frames = lines.slice(2);
    expect(frames.join('\n')).not.toMatch(/cuffwork.dist/);
    expect(frames.join('\n')).toContain('/app/yours.js');
    expect(frames[0]).toContain('issues.test.ts');
    expect(frames.join('\n')).not.toContain('new InputError');
    // As with every error, you may put your own in its place.
    Object.defineProperty(error, 'stack', { value: 'own' });
    expect(error.stack).toBe('own');
  });

  it('is known by its name and its issues, whichever copy made it', () => {
    const copy = Object.assign(new Error('x'), { name: 'InputError', issues: [] });
    expect([new InputError([]), copy].map(isInputError)).toEqual([true, true]);
    const breaks = new Proxy(new Error('x'), {
      get: () => {
        throw new RangeError('own');
      },
    });
    const others = [
      new Error('x'),
      Object.assign(new Error('x'), { name: 'InputError' }),
      Object.assign(new Error('x'), { issues: [] }),
      { name: 'InputError', issues: [] },
      undefined,
      breaks,
    ];
    expect(others.map(isInputError)).toEqual(others.map(() => false));
  });
});

describe('issues of a part', () => {
  it('are seen from further out', () => {
    const error = thrown(() =>
      within(['limbs', 0], () => {
        throw new InputError([one()], 3);
      }),
    ) as InputError;
    expect([error.issues.map(({ path }) => path), error.more]).toEqual([[['limbs', 0, 'load']], 3]);
    expect(error.message).toMatch(/^limbs\[0\]\.load /);
    expect(within(['limbs', 0], () => 5)).toBe(5);
    const own = new RangeError('own');
    expect(
      thrown(() =>
        within(['limbs'], () => {
          throw own;
        }),
      ),
    ).toBe(own);
  });

  it('are gathered, and anything else is thrown on', () => {
    const issues = [one(['first'])];
    expect(
      gather(issues, () => {
        throw new InputError([one()]);
      }),
    ).toBeUndefined();
    expect(
      gather(
        issues,
        () => {
          throw new InputError([one()]);
        },
        (path) => ['sets', ...path],
      ),
    ).toBeUndefined();
    expect(gather(issues, () => 5)).toBe(5);
    expect(issues.map(({ path }) => path.join('.'))).toEqual(['first', 'load', 'sets.load']);
    const own = new RangeError('own');
    expect(
      thrown(() =>
        gather(issues, () => {
          throw own;
        }),
      ),
    ).toBe(own);
  });

  it('end where there are more than anyone reads', () => {
    const issues = many(0);
    const error = thrown(() => {
      for (let at = 0; at < 1e6; at += 1) addIssue(issues, one(['list', at]));
    }) as InputError;
    expect(error).toBeInstanceOf(InputError);
    expect(error.issues).toHaveLength(100);
    expect(error.more).toBe(issues.length - 100);
  });

  it('are data where you attempt a call, and what is not ours is thrown on', () => {
    const other = Object.assign(new Error('x'), { name: 'InputError', issues: [] });
    expect(
      attempt(() => {
        throw other;
      }, {}),
    ).toEqual({ ok: false, issues: [], more: 0 });
    expect(
      attempt(() => {
        throw new InputError(many(2), 5);
      }, {}),
    ).toMatchObject({ ok: false, more: 5 });
    expect(attempt((input: { a: number }, more: number) => input.a + more, { a: 1 }, 2)).toEqual({
      ok: true,
      value: 3,
    });
    expect(attempt(5 as never, {})).toMatchObject({ ok: false, issues: [{ path: ['fn'], code: 'wrong-type' }] });
    const own = new RangeError('own');
    expect(
      thrown(() =>
        attempt(() => {
          throw own;
        }, {}),
      ),
    ).toBe(own);
  });
});

describe('an issue', () => {
  it('shows what was given: short, plain, and without running it', () => {
    const values = ['text', 5, true, undefined, null, {}, [], () => 1, 1n, Symbol('s')];
    expect(values.map(shown)).toEqual([
      '"text"',
      '5',
      'true',
      undefined,
      'null',
      'an object',
      'an empty list',
      'a function',
      'a bigint',
      'a symbol',
    ]);
  });

  it('says what was likely meant, or which fields there are', () => {
    const message = (code: 'unknown-field' | 'not-one-of', more: object) =>
      issue(code, ['x'], A_FORM, 'loadd', undefined, more).message;
    const plain = message('not-one-of', {});
    expect(message('not-one-of', { options: ['load', 'side'], suggestions: [] })).toBe(plain);
    expect(message('not-one-of', { options: ['load'], suggestions: ['load'] })).toContain("Did you mean 'load'?");
    expect(message('unknown-field', { options: ['load'], suggestions: ['load'] })).toContain('Did you mean load?');
    expect(message('unknown-field', { options: ['load'], suggestions: ['load', 'loads'] })).toContain('load or loads?');
    expect(message('unknown-field', { options: ['load'], suggestions: [] })).not.toBe(message('unknown-field', {}));
    expect(message('unknown-field', { options: [] })).toBe(message('unknown-field', {}));
  });
});
