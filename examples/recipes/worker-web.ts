import { attempt } from 'cuffwork';
import { columns, type OcclusionColumnsInput } from 'cuffwork/study';

/** The page gets the columns, or the issues. */
addEventListener('message', ({ data }: MessageEvent<OcclusionColumnsInput>) => {
  const result = attempt((input: OcclusionColumnsInput) => columns(input), data);
  const { value, lower, upper, standardDeviation, flag } = result.ok ? result.value : {};
  // The memory moves to the page: nothing is copied.
  const transfer = [value, lower, upper, standardDeviation, flag].flatMap((column) => column?.buffer ?? []);
  postMessage(result, { transfer });
});
