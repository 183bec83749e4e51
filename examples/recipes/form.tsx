import { standardSchemaResolver } from '@hookform/resolvers/standard-schema';
import { estimateOcclusionPressure, inputFields, type OcclusionInput } from 'cuffwork';
import { useState } from 'react';
import { useForm } from 'react-hook-form';

/** Not asked: the form is for one leg of a seated person. */
const known = { limb: 'leg', side: 'left', posture: 'seated' } as const;
const asked = ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg', 'cuffWidthCm'] as const;

/** Label, unit and bounds come from the function, and so do the errors. */
const facts = inputFields(estimateOcclusionPressure, known);

/** An empty field is left out; a decimal comma is a point; what is no number goes to the function as it is. */
export const numberOf = (text: string): number | string | undefined => {
  const value = text.trim().replace(',', '.');
  return value === '' ? undefined : Number.isNaN(Number(value)) ? text : Number(value);
};

export const resolver = standardSchemaResolver(estimateOcclusionPressure.input);

export function OcclusionForm() {
  const [answer, setAnswer] = useState('');
  const { register, handleSubmit, formState } = useForm<OcclusionInput>({ resolver, defaultValues: known });
  const submit = handleSubmit((input) => {
    const { value, lower, upper, cautions } = estimateOcclusionPressure(input);
    const interval = lower === undefined || upper === undefined ? '' : ` (${Math.round(lower)}–${Math.round(upper)})`;
    setAnswer([`${Math.round(value)}${interval} mmHg`, ...cautions.map(({ text }) => text)].join('\n'));
  });
  return (
    <form onSubmit={submit} onChange={() => setAnswer('')} noValidate>
      {asked.map((name) => {
        const fact = facts.find((field) => field.name === name);
        const error = formState.errors[name]?.message;
        return (
          <p key={name}>
            <label htmlFor={name}>
              {fact?.label} ({fact?.expected}; {fact?.where})
            </label>
            <input
              id={name}
              inputMode="decimal"
              aria-invalid={error !== undefined}
              aria-describedby={`${name}-error`}
              {...register(name, { setValueAs: numberOf })}
            />
            <span id={`${name}-error`}>{error}</span>
          </p>
        );
      })}
      <button type="submit">Estimate</button>
      <output style={{ whiteSpace: 'pre-line' }}>{answer}</output>
    </form>
  );
}
