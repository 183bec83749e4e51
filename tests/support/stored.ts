/** A document as it comes back from where it was stored. */
export const stored = <T>(document: T): T => JSON.parse(JSON.stringify(document)) as T;

export type Path = readonly (string | number)[];

/** A stored copy with the value at a place changed; one that becomes `undefined` is left out. */
export function edited<T extends object>(document: T, path: Path, to: unknown): T {
  const copy = stored(document);
  const parent = path.slice(0, -1).reduce<any>((part, name) => part[name], copy);
  parent[path.at(-1)!] = to;
  return stored(copy);
}
