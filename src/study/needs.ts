/** What columns, fits and draws are asked for. */
export const OWN_ID = [
  'own-id',
  'a letter, then up to 59 lower-case letters, digits and hyphens, and no id that the library has',
] as const;
export const NUMBER_PER_TERM = ['number-per-term', 'a list of numbers, one for each term, {terms} in all'] as const;
export const LISTS_OF_NUMBERS = ['lists-of-numbers', 'a list of lists of numbers, {terms} in all'] as const;
export const TRIANGLE = ['triangle', 'a lower triangle of numbers, one row for each term'] as const;
export const FITTED_EQUATION = ['fitted-equation', 'an equation of fitOcclusionEquation, as plain JSON'] as const;
export const TERMS = ['terms', 'a list of terms'] as const;
export const TERM_PER_FIELD = ['term-per-field', 'a field that no other term has'] as const;
export const PEOPLE_FOR_TERMS = ['people-for-terms', 'at least {least} for so many terms'] as const;
export const EQUATION_OR_OWN = [
  'equation-or-own',
  'the id of a published equation, or a whole equation of fitOcclusionEquation',
] as const;
export const ROWS = ['rows', 'a list of rows, one a person'] as const;
export const NUMBER_OR_NULL = ['number-or-null', 'a number, or null where it is missing'] as const;
export const WORD_OR_NULL = ['word-or-null', 'a word, or null where it is missing'] as const;
export const NAME_OR_NULL = ['name-or-null', 'a name or number, or null where it is missing'] as const;
export const NUMBER_LIST = ['number-list', 'a list of numbers'] as const;
export const NUMBERS_AS_LONG = ['numbers-as-long', 'a list of numbers, {rows} in all'] as const;
export const NAMES_AS_LONG = ['names-as-long', 'a list of names or numbers, {rows} in all'] as const;
export const PIPELINE = ['pipeline', 'a function that returns a finite number or an answer'] as const;
export const UNCERTAIN_READINGS = [
  'uncertain-readings',
  'an object of 1 to {most} readings, each with value and standardDeviation',
] as const;
export const OTHER_NAME = ['other-name', 'another name: this one is for the answer’s own error'] as const;
export const POSSIBLE_TOGETHER = ['possible-together', 'possible together (positive definite)'] as const;
export const TAKEN_READINGS = ['taken-readings', 'readings that the pipeline takes'] as const;
export const CORRELATIONS = ['correlations', 'a list of correlations, each between two inputs'] as const;
export const TWO_NAMES = ['two-names', 'the names of two different inputs'] as const;
export const EACH_PAIR_ONCE = ['each-pair-once', 'a pair that no other correlation has'] as const;
export const INTO = [
  'into',
  'four Float64Array (value, lower, upper, standardDeviation) and a Uint8Array (flag), each of {rows} rows',
] as const;
export const LEAST_NUMBERS = ['least-numbers', 'at least {least} numbers'] as const;
export const LEAST_PEOPLE_OF = ['least-people', 'at least {least} people'] as const;
export const LEAST_PAIRS_OF = ['least-pairs', 'at least {least} pairs with both values'] as const;
export const LEAST_BOTH = ['least-both', 'at least {least} people with both values'] as const;
export const LEAST_EVERY_TEST = ['least-every-test', 'at least {least} people with every test'] as const;
export const ROWS_FOR_TERMS = ['rows-for-terms', 'at least {least}, {each} for each term'] as const;
export const NAME_OR_NUMBER = ['name-or-number', 'a name or number'] as const;
export const STATISTIC = ['statistic', 'a function that returns a finite number'] as const;
export const TAKES_SAMPLES = ['takes-samples', 'one that takes samples of the rows'] as const;
export const TO_FINITE = ['to-finite', 'a function that leads to finite numbers'] as const;
export const PREDICTOR = ['predictor', 'a function that returns a predictor'] as const;
export const ABOVE_ZERO_LOG = ['above-zero-log', 'above 0 on a log scale'] as const;
export const READINGS = ['readings', 'an object of readings'] as const;
export const EACH_ONCE = ['each-once', 'a list of {options}, each once'] as const;
export const LEFT_OUT_AS_TERM = ['left-out-as-term', 'left out where it is a term'] as const;
export const VARYING_PRESSURES = ['varying-pressures', 'measured pressures that vary'] as const;
export const VARYING_FIELD = ['varying-field', 'readings that vary; leave {field} out'] as const;
export const INDEPENDENT = ['independent', 'independent of one another; leave {field} out'] as const;
export const NO_ROW_ALONE = ['no-row-alone', 'such that no one row decides a coefficient alone'] as const;
export const BOUNDED_COEFFICIENTS = [
  'bounded-coefficients',
  'readings that vary more: every coefficient from {min} to {max}',
] as const;
export const NO_PADDING = ['no-padding', 'one that needs no padding coefficient'] as const;
export const ONE_WIDTH = ['one-width', 'left out where all rows have one width'] as const;
export const DIFFERING = ['differing', 'readings for which {equation} differs'] as const;
export const VARYING_MORE = ['varying-more', 'estimates that vary more'] as const;
export const TESTS = ['tests', '2 to {most} lists of numbers, one for each test'] as const;
export const COLUMN_ANSWER = ['column-answer', 'a column answer of {kinds}'] as const;
export const MOST_COLUMN = ['most-column', 'a column of at most {most} rows'] as const;
export const AS_LONG = ['as-long', 'as long as the other columns, {rows} rows'] as const;
export const READABLE_COLUMN = ['readable-column', 'a column that can be read'] as const;
export const SOME_COLUMN = ['some-column', 'a column, or another field one'] as const;
export const GIVES_PRESSURE = ['gives-pressure', 'readings for which {equation} gives a pressure'] as const;
export const VALUES_OR_COLUMNS = ['values-or-columns', 'an object whose fields are values or columns'] as const;
export const MOST_FIELDS_OF = ['most-fields', 'at most {most} fields'] as const;
export const ONE_COLUMN = ['one-column', 'an object with at least one column'] as const;
export const ONE_KIND = ['one-kind', 'answers of one {name}, as the first: {value}'] as const;
export const SOME_ANSWER = ['some-answer', 'an answer for at least one row'] as const;
