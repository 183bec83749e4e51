import { isInputError } from 'cuffwork';
import { columns } from 'cuffwork/study';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';

/**
 * Calculates columns in another thread, so that a server keeps answering.
 *
 * @param {import('cuffwork/study').OcclusionColumnsInput} request
 * @returns {Promise<{ answer: import('cuffwork/study').ColumnAnswer } | { issues: import('cuffwork').InputIssue[] }>}
 */
export const inWorker = (request) =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url));
    worker.once('message', resolve).once('error', reject);
    worker.postMessage(request);
  });

if (!isMainThread && parentPort) {
  const port = parentPort;
  port.once('message', (request) => {
    try {
      const answer = columns(request);
      const { value, lower, upper, standardDeviation, flag } = answer;
      // The memory moves to the other thread: nothing is copied.
      const memory = [value, lower, upper, standardDeviation, flag].map(({ buffer }) => buffer);
      port.postMessage({ answer }, /** @type {ArrayBuffer[]} */ (memory));
    } catch (error) {
      // An error loses its fields between threads; its issues are plain data and keep theirs.
      if (!isInputError(error)) throw error;
      port.postMessage({ issues: error.issues });
    }
  });
}
