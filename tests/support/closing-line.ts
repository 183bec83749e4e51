import type { Reporter, SerializedError, TestModule } from 'vitest/node';

/** Ends a run with one plain line that counts the tests. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly SerializedError[]): void {
    // What is thrown beside the tests, when one of them has already passed, is a failure too.
    const count = { passed: 0, failed: unhandled.length, skipped: 0, pending: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) count[test.result().state] += 1;
      // A file that could not be loaded holds no test but is a failure all the same.
      count.failed += module.errors().length;
    }
    const skipped = count.skipped + count.pending;
    console.log(`\n${count.passed} passed, ${count.failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
  }
}
