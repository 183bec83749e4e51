/** The people of some rows, numbered from 0. */
export interface People {
  /** The person of each row. */
  readonly of: Int32Array;
  readonly count: number;
  /** How many rows each person has. */
  readonly rows: Float64Array;
}

/** The people of the rows that are kept, numbered anew; `who` numbers those of all rows, below the number of rows. */
export function peopleOfRows(kept: Int32Array, who: Int32Array): People {
  const numbers = new Int32Array(who.length).fill(-1);
  const of = new Int32Array(kept.length);
  const rows = new Float64Array(kept.length);
  let count = 0;
  for (let row = 0; row < kept.length; row += 1) {
    const known = who[kept[row]!]!;
    if (numbers[known]! < 0) numbers[known] = count++;
    const person = numbers[known]!;
    of[row] = person;
    rows[person]! += 1;
  }
  return { of, count, rows: rows.subarray(0, count) };
}
