/**
 * A table that nobody can change, all the way down: what one caller does to it would show in the answers of others.
 * Tables are frozen where they are defined; answers are made anew at each call, which costs less than freezing each.
 */
export function frozen<const T>(table: T): T {
  // null counts as frozen.
  if (typeof table === 'object' && !Object.isFrozen(table)) {
    for (const part of Object.values(Object.freeze(table as object))) frozen(part);
  }
  return table;
}
