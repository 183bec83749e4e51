import { readFileSync } from 'node:fs';
import { basename, join, normalize } from 'node:path';

/** A page of the docs. */
export interface Guide {
  readonly file: string;
  readonly name: string;
  readonly title: string;
  /** Its first paragraph. */
  readonly about: string;
  readonly text: string;
}

const front = readFileSync('docs/README.md', 'utf8');

/** Every page that the front page of the docs links to, in that order. */
export const guides: readonly Guide[] = [...front.matchAll(/\]\(([\w./-]+\.md)\)/g)].map(([, link]) => {
  const file = normalize(join('docs', link!));
  const text = readFileSync(file, 'utf8');
  const [, title, about] = /^# (.*)\n+([^\n]*)/.exec(text)!;
  return { file, name: basename(file, '.md'), title: title!, about: about!, text };
});
