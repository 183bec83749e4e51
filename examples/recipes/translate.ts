import { attempt, targetCuffPressure } from 'cuffwork';
import { explain, messages, show, words, type Texts } from 'cuffwork/explain';
import { de } from 'cuffwork/explain/de';

/** Part of a catalogue in Italian: what it leaves out stays in English. */
export const italian = {
  ...messages,
  ...words,
  'number.decimal-mark': ',',
  'out-of-range': '{field} deve essere {expected}; valore indicato: {received}.',
  'unknown-field': '{field} non è un campo.',
  'did-you-mean': 'Intendeva {options}?',
  'expected.number': 'un numero da {min} a {max}',
  'field.occlusion': 'pressione di occlusione',
  'field.percentLop': 'percentuale della pressione di occlusione',
  'field.gaugeStepMmHg': 'passo del manometro',
  'kind.cuff-pressure': 'Pressione del bracciale',
  'severity.caution': 'attenzione',
  'percent-below-usual':
    '{percentLop} % è meno di quanto indicano le linee guida, {low}–{high} % della pressione di occlusione.',
} satisfies Texts;

export const languages = { en: undefined, de, it: italian } as const;
export type Language = keyof typeof languages;

/** The target, its cautions and its page in the language of the reader, or one line for each problem. */
export function targetIn(language: Language, input: unknown) {
  const locale = languages[language];
  const result = attempt(targetCuffPressure, input);
  if (!result.ok) return { problems: result.issues.map((issue) => show(issue, { locale })) };
  const { value: target } = result;
  return {
    line: show(target, { locale }),
    cautions: target.cautions.map((caution) => show(caution, { locale })),
    page: explain(target, { locale, format: 'html' }),
  };
}
