/** A story of an invented person, in the pages of the library. */
export interface Story {
  readonly title: string;
  readonly intro: readonly string[];
  readonly pages: readonly string[];
}

/** A page under a heading; its own headings go down by one. */
export const page = (heading: string, markdown: string): string =>
  `## ${heading}\n\n${markdown.replace(/^(#+) /gm, '##$1 ')}`;

/** A story as a page of the docs. */
export const storyMarkdown = ({ title, intro, pages }: Story): string =>
  [`# ${title}`, ...intro, ...pages].join('\n\n') + '\n';
