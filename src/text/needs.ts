/** What the functions that write text are asked for. */
export const EXPLAINED = ['explained', 'an answer, a comparison or a document of this library, as plain JSON'] as const;
export const SHOWN = [
  'shown',
  'an answer, a document, an issue, a caution, an assumption, or a list of them, as plain JSON',
] as const;
export const ROWS_OF = ['rows-of', 'an answer, a list of answers, or a document, as plain JSON'] as const;
export const HOLDS_ANSWERS = [
  'holds-answers',
  'an answer, a plan, or anything that holds answers, as plain JSON',
] as const;
export const OPTIONS_OF = ['options-of', 'options of {name}, as plain JSON'] as const;
export const FORMAT_HERE = ['format-here', "'text', 'markdown' or 'html' for this document"] as const;
export const FULL_HERE = [
  'full-here',
  "'full' here: a plan and a record can be brief, and a plan a sentence, as text, Markdown or HTML",
] as const;
export const FIELDS = ['fields', 'the fields of inputFields, as plain JSON'] as const;
export const SLOT_VALUES = ['slot-values', 'values by the names of their slots, as plain JSON'] as const;
export const SHORT_TEXT = ['short-text', 'text of at most {most} characters'] as const;
export const NUMBER_OR_TEXT = ['number-or-text', 'a number, or text of at most {most} characters'] as const;
export const TEXTS_BY_CODE = ['texts-by-code', 'texts by their codes, such as `de` of cuffwork/explain/de'] as const;
