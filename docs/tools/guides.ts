import { readFileSync } from 'node:fs';
import { basename, dirname, join, normalize } from 'node:path';

/** A page of the docs. */
export interface Guide {
  readonly file: string;
  readonly name: string;
  readonly title: string;
  /** The heading of the front page that it is listed under. */
  readonly group: string;
  /** Its address on the site, without its ending. */
  readonly address: string;
  /** Its first paragraph. */
  readonly about: string;
  readonly text: string;
}

const front = readFileSync('docs/README.md', 'utf8');
const listed = front.slice(front.indexOf('## The course'), front.indexOf('## An answer'));

/** Every page that the front page of the docs lists, in that order, once each. */
export const guides: readonly Guide[] = listed.split(/^#{2,3} /m).flatMap((part) => {
  const group = /^[^\n]*/.exec(part)![0].replace(/^The course$/, 'Course');
  return [...part.matchAll(/\]\(([\w./-]+\.md)\)/g)].map(([, link]) => {
    const file = normalize(join('docs', link!));
    const text = readFileSync(file, 'utf8');
    const [, title, about] = /^# (.*)\n+([^\n]*)/.exec(text)!;
    const name = basename(file, '.md');
    const inside = basename(dirname(file));
    const folder = ['course', 'maintainers', 'stories'].includes(inside) ? inside : 'guide';
    return { file, name, title: title!, group, address: `${folder}/${name.toLowerCase()}`, about: about!, text };
  });
});
