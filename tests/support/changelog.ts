const HEADINGS = ['Added', 'Changed', 'Deprecated', 'Removed', 'Fixed', 'Security', 'Changed values'];
const MOVES = 'Changed values';

interface Section {
  readonly title: string;
  readonly parts: Map<string, string[]>;
}

/** Sorts as versions do: 0.10.0 after 0.9.0. */
const rank = (version: string): string =>
  version
    .split('.')
    .map((part) => part.padStart(6, '0'))
    .join('.');

const isDate = (text: string): boolean => {
  const time = Date.parse(`${text}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(text);
};

function sectionsOf(text: string): { sections: Section[]; wrong: string[] } {
  const sections: Section[] = [];
  const wrong: string[] = [];
  let items: string[] | undefined;
  for (const line of text.split('\n')) {
    const parts = sections.at(-1)?.parts;
    if (line.startsWith('## ')) {
      sections.push({ title: line.slice(3), parts: new Map() });
      items = undefined;
    } else if (line.startsWith('### ')) {
      const heading = line.slice(4);
      if (!HEADINGS.includes(heading)) wrong.push(`“${heading}” is none of ${HEADINGS.join(', ')}`);
      if (parts?.has(heading)) wrong.push(`“${heading}” stands twice under ${sections.at(-1)!.title}`);
      parts?.set(heading, (items = []));
    } else if (line.startsWith('- ')) {
      if (items) items.push(line.slice(2));
      else wrong.push(`no heading above “${line}”`);
    } else if (line !== '' && items) wrong.push(`neither a heading nor an entry: “${line}”`);
  }
  return { sections, wrong };
}

/** What is wrong with a changelog, for a package at a version; nothing when it is right. */
export function changelogComplaints(text: string, version: string): string[] {
  const { sections, wrong } = sectionsOf(text);
  if (!text.startsWith('# Changelog\n')) wrong.push('it must begin with “# Changelog”');
  const released: string[] = [];
  const dates: string[] = [];
  for (const [index, { title, parts }] of sections.entries()) {
    for (const [heading, items] of parts) if (items.length === 0) wrong.push(`“${heading}” of ${title} is empty`);
    if (!parts.has(MOVES)) wrong.push(`${title} does not say which values change`);
    if (title === 'Unreleased') {
      if (index > 0) wrong.push('Unreleased must come first');
      continue;
    }
    const [, number, date] = /^(\d+\.\d+\.\d+) - (\d{4}-\d{2}-\d{2})$/.exec(title) ?? [];
    if (!number || !date || !isDate(date)) {
      wrong.push(`“${title}” is neither Unreleased nor a version with its date, “1.2.3 - 2030-12-31”`);
      continue;
    }
    released.push(number);
    dates.push(date);
    const moves = parts.get(MOVES)?.some((item) => !item.startsWith('None')) ?? false;
    if (moves && !number.endsWith('.0')) wrong.push(`${number} is a patch, and a patch moves no number`);
  }
  if (sections.length === 0) wrong.push('it has no section');
  const sorted = [...released].sort((a, b) => (rank(a) < rank(b) ? 1 : -1));
  if (new Set(released).size < released.length || sorted.join() !== released.join()) {
    wrong.push('versions must stand newest first, each once');
  }
  if ([...dates].sort().reverse().join() !== dates.join())
    wrong.push('dates must not rise from one version to an older');
  const newest = released[0];
  if (newest !== undefined && newest !== version && sections[0]?.title !== 'Unreleased') {
    wrong.push(`the newest version is ${newest}, the package is at ${version}`);
  }
  if (newest !== undefined && rank(newest) > rank(version))
    wrong.push(`${newest} is newer than the package, ${version}`);
  return wrong;
}
