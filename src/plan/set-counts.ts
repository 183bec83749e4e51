/** The repetitions of sets in the trade’s notation: `30-15-15-15`. */
export const setCounts = (sets: readonly { readonly repetitions?: number }[]): string =>
  sets.map(({ repetitions }) => repetitions ?? '–').join('-');
