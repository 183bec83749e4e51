import { attempt, type Path } from 'cuffwork';
import { explain, words } from 'cuffwork/explain';
import { planSession, stopsInForce, type Plan } from 'cuffwork/plan';
import { useState, type FormEvent } from 'react';

/** The fields of the form, each at its place in the request. */
const fields = [
  { path: 'systolicMmHg', label: 'Systolic pressure [mmHg]', start: 118 },
  { path: 'diastolicMmHg', label: 'Diastolic pressure [mmHg]', start: 74 },
  { path: 'limbs.0.circumferenceCm', label: 'Thigh circumference [cm]', start: 56 },
  { path: 'limbs.0.cuffWidthCm', label: 'Cuff width [cm]', start: 10 },
  { path: 'limbs.0.percentLop', label: 'Share of occlusion pressure [%]', start: 50 },
  { path: 'exercises.0.oneRepMax.load', label: 'Tested maximum [kg]', start: 60 },
  { path: 'exercises.0.percentOneRepMax', label: 'Share of the maximum [%]', start: 25 },
] as const;

/** What is wrong, by the place it stands at. */
type Wrong = Readonly<Record<string, string>>;

const place = (path: Path | undefined): string => (path ?? []).join('.');

function requestOf(data: FormData): object {
  const number = (path: (typeof fields)[number]['path']): number | undefined => {
    const text = String(data.get(path) ?? '');
    return text === '' ? undefined : Number(text);
  };
  return {
    systolicMmHg: number('systolicMmHg'),
    diastolicMmHg: number('diastolicMmHg'),
    posture: 'seated',
    limbs: [
      {
        limb: 'leg',
        side: 'left',
        circumferenceCm: number('limbs.0.circumferenceCm'),
        cuffWidthCm: number('limbs.0.cuffWidthCm'),
        percentLop: number('limbs.0.percentLop'),
        gaugeStepMmHg: 5,
      },
    ],
    exercises: [
      {
        name: 'leg extension',
        limb: 'leg',
        oneRepMax: { load: number('exercises.0.oneRepMax.load') },
        percentOneRepMax: number('exercises.0.percentOneRepMax'),
        step: 2.5,
        scheme: '30-15-15-15',
        tempo: { eccentricS: 2, concentricS: 2 },
        restS: 30,
        restriction: 'continuous',
      },
    ],
  };
}

/** The plan of a request, or what is wrong with it by the place of the field. */
function planOf(request: object): Plan | Wrong {
  const planned = attempt(planSession, request);
  if (planned.ok) return planned.value;
  return Object.fromEntries(planned.issues.map(({ path, message }) => [place(path), message]));
}

const isPlan = (result: Plan | Wrong): result is Plan => result['document'] === 'plan';

export function PlanForm() {
  const [result, setResult] = useState<Plan | Wrong>({});
  const wrong: Wrong = isPlan(result) ? {} : result;
  const known = fields.map(({ path }) => path as string);
  const elsewhere = Object.entries(wrong).filter(([path]) => !known.includes(path));

  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = event.currentTarget;
    const answer = planOf(requestOf(new FormData(form)));
    setResult(answer);
    const first = known.find((path) => Object.hasOwn(answer, path));
    if (first) (form.elements.namedItem(first) as HTMLInputElement).focus();
  };

  return (
    <>
      <header>
        <h1>Session plan</h1>
      </header>
      <main>
        <form onSubmit={submit} noValidate aria-label="Readings">
          <fieldset>
            <legend>Leg extension, left leg, seated</legend>
            {fields.map(({ path, label, start }) => (
              <div key={path} data-field={path}>
                <label htmlFor={path}>{label}</label>
                <input
                  id={path}
                  name={path}
                  type="number"
                  step="any"
                  defaultValue={start}
                  aria-invalid={Object.hasOwn(wrong, path)}
                  aria-describedby={`${path}-error`}
                />
                <p className="error" id={`${path}-error`}>
                  {wrong[path]}
                </p>
              </div>
            ))}
            <button type="submit">Plan the session</button>
          </fieldset>
        </form>
        <div role="status">
          {elsewhere.map(([path, text]) => (
            <p className="error" key={path}>
              {text}
            </p>
          ))}
          {isPlan(result) && <PlanPage plan={result} />}
        </div>
      </main>
    </>
  );
}

function PlanPage({ plan }: { readonly plan: Plan }) {
  const [item] = plan.items;
  // While a stop is in force there is no setting to show.
  const stopped = stopsInForce(plan).length > 0;
  return (
    <section aria-labelledby="plan-title">
      <h2 id="plan-title">
        {stopped ? words['page.do-not-train'] : `${item?.target?.value} mmHg, ${item?.load?.value} kg`}
      </h2>
      <ul className="cautions">
        {plan.cautions
          .filter(({ severity }) => !stopped || severity === 'stop')
          .map(({ severity, text }) => (
            <li key={text} className={severity}>
              <strong>{severity}</strong> {text}
            </li>
          ))}
      </ul>
      <details>
        <summary>The whole plan with its working</summary>
        <pre className="working" tabIndex={0} role="region" aria-label="The whole plan">
          {explain(plan)}
        </pre>
      </details>
    </section>
  );
}
