import { gather, type InputIssue, type Path } from '../answer/issues.js';

const startsWith = (path: Path, place: Path): boolean => place.every((step, index) => path[index] === step);

/** Gathers what the parts of a plan find wrong, with paths from the top of the request. */
export class Findings {
  readonly issues: InputIssue[];
  constructor(issues: InputIssue[]) {
    this.issues = issues;
  }

  /**
   * Runs one part, unless something it draws on is known to be wrong: its place in the request (only the `fields`
   * there, where they are named), or fields of the person that it uses.
   */
  try<T>(
    place: Path,
    part: () => T,
    { fields, uses = [] }: { fields?: readonly string[]; uses?: readonly string[] } = {},
  ): T | undefined {
    const isUsed = (path: Path): boolean => uses.some((field) => path[0] === field);
    const known = this.issues.some(({ path }) => {
      const next = path[place.length];
      const isNamed = !fields || next === undefined || fields.some((field) => field === next);
      return (startsWith(path, place) && isNamed) || startsWith(place, path) || isUsed(path);
    });
    if (known) return undefined;
    return gather(this.issues, part, (path) => (isUsed(path) ? path : [...place, ...path]));
  }
}
