import type { StandardSchemaV1 } from '@standard-schema/spec';
import { frozen } from '../quantity/frozen.js';
import { attempt } from './issues.js';

/** A function with its input as a Standard Schema. */
export interface TakesInput<I> {
  /**
   * What the function takes, as a Standard Schema for forms and servers. It runs the function: what the schema accepts,
   * the function accepts, and the issues are those of its {@link InputError}.
   */
  readonly input: StandardSchemaV1<I>;
}

/** What a reader takes, as a Standard Schema that runs it. */
export const schemaOf = <I>(read: (given: never) => unknown): StandardSchemaV1<I> =>
  frozen({
    '~standard': {
      version: 1,
      vendor: 'cuffwork',
      validate: (given) => {
        const result = attempt(read, given);
        return result.ok ? { value: given as I } : { issues: result.issues };
      },
    },
  });

/** A public function, with the schema of its input. */
export const withInput = <F extends (input: never, ...more: never[]) => unknown>(
  fn: F,
): F & TakesInput<Parameters<F>[0]> => Object.assign(fn, { input: schemaOf<Parameters<F>[0]>(fn) });
