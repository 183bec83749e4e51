/**
 * A table that nobody can change, all the way down: what one caller does to it would show in the answers of others.
 * Tables are frozen where they are defined; answers are made anew at each call, which costs less than freezing each.
 */
export function frozen<const T>(table: T): T {
  if (typeof table === 'object' && table !== null && !Object.isFrozen(table)) {
    Object.freeze(table);
    for (const part of Object.values(table)) frozen(part);
  }
  return table;
}
