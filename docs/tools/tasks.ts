import { sep } from 'node:path';

/** What a public name is for, by the folder that declares it; the order is that of the site. */
const TASKS: readonly (readonly [string, string])[] = [
  ['pressure', 'Pressure of the cuff'],
  ['strength', 'Maximum and load'],
  ['session', 'Session and week'],
  ['plan', 'Screen, plan, record, progress'],
  ['teaching', 'Learn'],
  ['study', 'Research'],
  ['evidence', 'Evidence and limits'],
  ['answer', 'Answers, words and errors'],
  ['text', 'Answers, words and errors'],
  ['quantity', 'Units'],
];
const OTHER = 'Answers, words and errors';

/** The task of a name by the file that declares it. */
export const taskOf = (file: string): string => {
  const folder = file.split(sep).at(-2) === 'equations' ? file.split(sep).at(-3) : file.split(sep)[1];
  return TASKS.find(([name]) => name === folder)?.[1] ?? OTHER;
};

/** Every task, in the order of the site. */
export const tasks: readonly string[] = [...new Set(TASKS.map(([, task]) => task))];
