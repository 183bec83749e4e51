/** Where a rising function reaches `wanted`, by halving to the last bit. */
export function rootOf(rising: (x: number) => number, wanted: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return middle;
    if (rising(middle) < wanted) low = middle;
    else high = middle;
  }
}
