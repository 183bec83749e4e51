import {
  attempt,
  compareOcclusionEquations,
  equations,
  grades,
  type Answer,
  type Caution,
  type InputIssue,
} from 'cuffwork';
import groupMeans from 'cuffwork/checks/group-means.json' with { type: 'json' };
import { explain, fill, messages, words } from 'cuffwork/explain';
import { audiences, planSession, stopsInForce, type Audience, type Plan, type PlanItem } from 'cuffwork/plan';
import { bandChart, clock, curveChart, timelineChart, type CurvePoint } from './charts.js';
import {
  choices,
  fields,
  isAsked,
  requestOf,
  type Choice,
  type ChoiceName,
  type Field,
  type FieldName,
} from './fields.js';
import { element } from './element.js';

const byId = (id: string): HTMLElement => document.getElementById(id)!;
const form = byId('readings') as HTMLFormElement;

const say = (id: string, text: string): void => {
  byId(id).textContent = text;
};
const list = (id: string, texts: readonly string[]): void =>
  byId(id).replaceChildren(...texts.map((text) => element('li', {}, text)));

/** A number field with what it means, its slider and the place for what is wrong with it. */
function buildField(place: Element, name: FieldName): void {
  const { label, unit, start, slider, hint }: Field = fields[name];
  const input = element('input', {
    id: name,
    name,
    value: start,
    'aria-describedby': `${name}-hint ${name}-error`,
    ...(name === 'scheme'
      ? { type: 'text' }
      : { type: 'number', inputmode: 'decimal', step: String(slider?.[2] ?? 'any') }),
  });
  place.append(
    element('label', { for: name }, unit ? `${label} [${unit}]` : label),
    input,
    element('p', { class: 'hint', id: `${name}-hint` }, hint ?? ''),
    element('p', { class: 'error', id: `${name}-error` }),
  );
  if (!slider) return;
  const [min, max, step] = slider.map(String) as [string, string, string];
  // The slider is for the pointer; by keyboard the number beside it does the same in the same steps.
  const range = element('input', {
    type: 'range',
    min,
    max,
    step,
    value: start,
    tabindex: '-1',
    'aria-label': `${label}, slider`,
  });
  range.addEventListener('input', () => {
    input.value = range.value;
    update();
  });
  input.addEventListener('input', () => {
    range.value = input.value;
  });
  input.after(range);
}

function buildChoice(place: Element, name: ChoiceName): void {
  const { label, options, start }: Choice = choices[name];
  place.setAttribute('role', 'radiogroup');
  place.setAttribute('aria-labelledby', `${name}-label`);
  place.append(
    element('span', { class: 'label', id: `${name}-label` }, label),
    element(
      'span',
      { class: 'options' },
      ...Object.entries(options).map(([value, text]) =>
        element(
          'label',
          {},
          element('input', { type: 'radio', name, value, ...(value === start && { checked: '' }) }),
          element('span', {}, text),
        ),
      ),
    ),
  );
}

const round = (value: number, digits = 0): string => String(Number(value.toFixed(digits)));
const units: Readonly<Record<string, string>> = { 'mm[Hg]': 'mmHg', kg: 'kg' };

/** `95 % interval 102–218 mmHg` */
const interval = ({ lower, upper, unit }: Answer): string =>
  lower === undefined || upper === undefined
    ? 'no 95 % interval is known'
    : `95 % interval ${round(lower)}–${round(upper)} ${units[unit]}`;

/** The percentage that is reached, with its 95 % interval. */
function reached({ reached: share }: Answer, of: string): string {
  const { lower, upper } = share!;
  const percent = 'percentLop' in share! ? share.percentLop : share!.percentOneRepMax;
  const range =
    lower === undefined
      ? 'no 95 % interval is known'
      : upper === undefined
        ? `95 % interval ${round(lower)} % and above`
        : `95 % interval ${round(lower)}–${round(upper)} %`;
  return `${round(percent, 1)} % of ${of}; ${range}`;
}

const gradeWords = ({ equation, evidence }: Answer): string => {
  const known = [...equations.occlusionPressure, ...equations.oneRepetitionMaximum].some(({ id }) => id === equation);
  return `${known ? 'Equation' : 'Method'} ${equation}, ${evidence}: ${grades[evidence]}.`;
};

const wide = (text: string, { lower, upper }: Answer, unit: string): string =>
  lower === undefined || upper === undefined ? text : `${text}, 95 % interval ${round(lower)}–${round(upper)} ${unit}`;

/** A figure large, its unit small. */
function figure(id: string, text: string): void {
  const [, number, unit] = /^([\d.:]+)( .*)$/.exec(text) ?? [undefined, text, ''];
  byId(`answer-${id}`).replaceChildren(number!, element('small', {}, unit!));
}

/** Puts a chart as wide as its place. */
function chart(id: string, drawn: (width: number) => SVGElement): void {
  const place = byId(id);
  place.replaceChildren(drawn(Math.max(place.clientWidth, 280)));
}

/** The pressures of the cuff; what they would be, where it is not worn. */
function cuffOf({ request, items: [item] }: Plan): Required<Pick<PlanItem, 'occlusion' | 'target'>> {
  const { occlusion, target } = item!;
  if (occlusion && target) return { occlusion, target };
  const exercises = request.exercises.map((exercise) => ({ ...exercise, restriction: 'continuous' as const }));
  return cuffOf(planSession({ ...request, exercises }));
}

/** A caution with its severity. */
const cautionItem = ({ severity, text }: Caution): HTMLElement =>
  element('li', { class: severity }, element('strong', {}, words[`severity.${severity}`]!), ` ${text}`);

/** Cautions by whom they are for: those of the person in sight, the others folded away. */
function showCautions(cautions: readonly Caution[]): void {
  const places: Record<Audience, string> = { person: 'cautions', practitioner: 'practitioner', method: 'method' };
  for (const [audience, id] of Object.entries(places)) {
    const own = cautions.filter(({ code }) => (audiences[code] ?? 'person') === audience);
    byId(id).replaceChildren(...own.map(cautionItem));
    if (audience === 'person') byId(id).parentElement!.classList.toggle('none', own.length === 0);
    else {
      say(`${id}-title`, `${words[`page.${id}`]!} (${own.length})`);
      byId(id).parentElement!.hidden = own.length === 0;
    }
  }
}

/** What is said whoever trains: above the numbers, at the end, and what to stop at. */
function showStanding({ disclaimers, stopCriteria }: Plan): void {
  const first = disclaimers.slice(0, 2);
  say('standing', first.map(({ text }) => text).join(' '));
  list(
    'always',
    disclaimers.slice(first.length).map(({ text }) => text),
  );
  list(
    'stop',
    stopCriteria.map(({ text }) => text),
  );
}

/** The stops in force, in the place of every setting. */
function showStops(plan: Plan): string {
  const stops = stopsInForce(plan).map(({ text }) => text);
  list('stops-list', stops);
  return stops.length > 0 ? `${words['page.do-not-train']!}. ${stops.join(' ')}` : '';
}

/** Widths of the curve that is drawn [cm]: those of the published means. */
const WIDTHS: Readonly<Record<string, readonly [number, number]>> = { leg: [5, 18], arm: [3, 13] };

/** The pooled curve for this person, beside the published means; the other equations are folded away. */
function showCurve({ request }: Plan): void {
  const { limb, circumferenceCm, cuffWidthCm } = request.limbs[0]!;
  const place = byId('curve-section');
  place.hidden = circumferenceCm === undefined || cuffWidthCm === undefined;
  if (circumferenceCm === undefined || cuffWidthCm === undefined) return;
  const { systolicMmHg, diastolicMmHg, ageYears, sex, posture } = request;
  const person = { limb, circumferenceCm, systolicMmHg, diastolicMmHg, posture } as const;
  const of = (width: number) =>
    compareOcclusionEquations({
      ...person,
      cuffWidthCm: width,
      ...(ageYears !== undefined && { ageYears }),
      ...(sex !== undefined && { sex }),
    }).answers;
  const [from, to] = WIDTHS[limb]!;
  const curve = Array.from({ length: 2 * (to - from) + 1 }, (_, index): CurvePoint => {
    const { value, lower, upper } = of(from + index / 2)[0]!;
    return { width: from + index / 2, value, lower: lower!, upper: upper! };
  });
  const means = groupMeans.rows.flatMap(({ limb: on, cuffWidthCm: width, mean, posture: at }) =>
    on === limb && width !== undefined && (at === 'supine' || at === 'not-stated') ? [{ width, mean }] : [],
  );
  const [first, last] = [curve[0]!, curve.at(-1)!];
  const inWords = `The pressure falls from ${round(first.value)} mmHg with a cuff of ${from} cm to ${round(last.value)} mmHg with ${to} cm. Published means: ${means.map(({ width, mean }) => `${mean} mmHg at ${width} cm`).join(', ')}.`;
  chart('curve-chart', (width) => curveChart(width, inWords, curve, means, cuffWidthCm));
  byId('others').replaceChildren(
    ...of(cuffWidthCm).map((answer) =>
      element(
        'tr',
        {},
        element('td', {}, answer.equation),
        element('td', {}, round(answer.value)),
        element('td', {}, interval(answer)),
      ),
    ),
  );
}

function showPlan(plan: Plan): string {
  const [item] = plan.items;
  // The form always asks for a maximum and a percentage of it.
  const { oneRepMax, load, totals, restriction } = item as Required<PlanItem>;
  const { timeline } = plan.session;
  const { occlusion, target } = cuffOf(plan);
  const occlusionText = `${round(occlusion.value)} mmHg`;
  const targetText = restriction === 'none' ? 'no cuff' : `${round(target.value, 1)} mmHg`;
  const loadText = `${round(load.value, 2)} kg`;
  const time = `${clock(totals.restrictionTime.value)} min`;
  const { known } = values();
  say('occlusion-name', `Occlusion pressure, ${known}`);
  figure('occlusion', occlusionText);
  say('occlusion-range', interval(occlusion));
  figure('target', targetText);
  say('target-range', restriction === 'none' ? '' : reached(target, 'LOP'));
  figure('load', loadText);
  say('load-range', reached(load, 'the maximum'));
  figure('restriction', time);
  say('session-range', `of a session of ${clock(totals.sessionTime.value)} min`);

  say('grade', gradeWords(occlusion));
  const { systolicMmHg, diastolicMmHg } = plan.request;
  chart('pressure-chart', (width) =>
    bandChart(
      width,
      `${wide(`Limb occlusion pressure ${occlusionText}`, occlusion, 'mmHg')}. ${wide(`Cuff pressure ${targetText}; the share asked for would be`, target, 'mmHg')}.`,
      'mmHg',
      [
        { name: 'Limb occlusion pressure (LOP)', look: 'pressure', ...occlusion },
        { name: `Cuff pressure for ${target.inputs['percentLop']} % of LOP`, look: 'setting', ...target },
      ],
      [
        { at: diastolicMmHg, name: 'diastolic ' },
        { at: systolicMmHg, name: ' systolic' },
      ],
    ),
  );
  showCurve(plan);
  const { percentLop, lower, upper } = target.reached!;
  chart('percent-chart', (width) =>
    bandChart(
      width,
      `The cuff pressure is ${reached(target, 'LOP')}. At 100 % the artery is closed.`,
      '%',
      [{ name: 'What that setting may really be', look: 'setting', value: percentLop, lower, upper }],
      [{ at: 100, name: 'artery closed ' }],
    ),
  );
  say('load-grade', `Maximum ${round(oneRepMax.value, 1)} kg, ${interval(oneRepMax)}. ${gradeWords(oneRepMax)}`);
  chart('load-chart', (width) =>
    bandChart(width, wide(`Load ${loadText}; the share asked for would be`, load, 'kg'), 'kg', [
      { name: `Load for ${load.inputs['percentOneRepMax']} % of the maximum`, look: 'load', ...load },
    ]),
  );

  const sums = [
    `${totals.repetitions.value} repetitions`,
    `volume load ${round(totals.volumeLoad!.value, 1)} kg`,
    `time under tension ${clock(totals.timeUnderTension.value)}`,
    `longest unbroken restriction ${clock(totals.longestRestriction.value)}`,
  ].join(' · ');
  say('totals', sums);
  const sets = timeline.events.filter(({ event }) => event === 'set').map(({ repetitions }) => repetitions);
  const inWords = `Sets of ${sets.join(', ')} repetitions in ${clock(timeline.durationS)} minutes; restriction ${time}.`;
  chart('timeline', (width) => timelineChart(width, inWords, timeline));
  const rows = timeline.events.map(({ atS, event, set, repetitions }): [string, string] => [
    clock(atS),
    event === 'set' ? `set ${set}: ${repetitions} repetitions` : words[`page.${event}`]!,
  ]);
  byId('clock').replaceChildren(
    ...[...rows, [clock(timeline.durationS), 'end']].map((cells) =>
      element('tr', {}, ...cells.map((cell) => element('td', {}, cell!))),
    ),
  );

  showCautions(plan.cautions);
  const { cautions: _, ...sumsOfSession } = totals;
  const workings: Record<string, readonly Answer[]> = {
    pressure: [target],
    load: [load],
    session: Object.values(sumsOfSession),
  };
  for (const [id, answers] of Object.entries(workings)) {
    byId(`working-${id}`).innerHTML = answers.map((answer) => explain(answer, { format: 'mathml' })).join('');
  }
  return `Occlusion pressure ${occlusionText}, cuff ${targetText}, load ${loadText}, restriction ${time}.`;
}

/** What is wrong, in the library’s sentence with the field’s name on this page, beside the field. */
function showIssues(issues: readonly InputIssue[]): string {
  const wrong: string[] = [];
  for (const { path, code, expected, received, values, message } of issues) {
    const name = (Object.keys(fields) as FieldName[]).find((field) => fields[field].path === path.join('.'));
    if (!name) {
      wrong.push(message);
      continue;
    }
    const { label } = fields[name];
    const place = byId(`${name}-error`);
    place.append(element('span', {}, fill(messages[code], { field: label, expected, received, ...values })), ' ');
    byId(name).setAttribute('aria-invalid', 'true');
    wrong.push(label);
  }
  return `No answer: look at ${wrong.join(', ')}.`;
}

let announcing = 0;
/** Says the answers aloud when the hand has come to rest. */
function announce(text: string): void {
  clearTimeout(announcing);
  announcing = window.setTimeout(() => say('status', text), 400);
}

const values = (): Record<string, string> =>
  Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value)]));

function update(): void {
  const given = values();
  const read = (name: string): string => given[name] ?? '';
  for (const part of form.querySelectorAll<HTMLElement>('[data-when]')) {
    part.hidden = !isAsked(part.dataset['when']!, read);
  }
  const result = attempt(planSession, requestOf(read));
  for (const error of form.querySelectorAll('.error')) error.replaceChildren();
  for (const input of form.querySelectorAll('[aria-invalid]')) input.removeAttribute('aria-invalid');
  const stopped = result.ok ? showStops(result.value) : '';
  document.body.classList.toggle('unanswered', !result.ok);
  byId('stops').hidden = stopped === '';
  // While a stop is in force there is no setting on the page.
  document.querySelector<HTMLElement>('.figures')!.hidden = stopped !== '';
  for (const part of document.querySelectorAll<HTMLElement>('.worked')) part.hidden = !result.ok || stopped !== '';
  if (result.ok) showStanding(result.value);
  for (const id of ['occlusion', 'target', 'load', 'restriction']) figure(id, '–');
  for (const id of ['occlusion-range', 'target-range', 'load-range', 'session-range']) say(id, '');
  if (result.ok) announce(stopped || showPlan(result.value));
  else announce(showIssues(result.issues));
}

for (const place of form.querySelectorAll<HTMLElement>('[data-field]')) {
  buildField(place, place.dataset['field'] as FieldName);
}
for (const place of form.querySelectorAll<HTMLElement>('[data-choice]')) {
  buildChoice(place, place.dataset['choice'] as ChoiceName);
}
const headings = {
  stops: 'page.do-not-train',
  stop: 'page.stop',
  watch: 'page.watch',
  always: 'page.always',
};
for (const [id, code] of Object.entries(headings)) say(`${id}-title`, words[code]!);
say('stops-what', words['page.no-settings']!);
form.addEventListener('input', update);
window.addEventListener('resize', update);
form.addEventListener('submit', (event) => event.preventDefault());
update();
