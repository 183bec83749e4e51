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
import {
  audiences,
  compareSessions,
  compareWeeks,
  expandDocument,
  planSession,
  stopsInForce,
  type Audience,
  type ExpandedPlanItem,
  type Plan,
} from 'cuffwork/plan';
import { bandChart, clock, curveChart, timelineChart, tradeStrip, weeksChart, type CurvePoint } from './charts.js';
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
  const { type, label, unit, start, slider, hint }: Field = fields[name];
  const input = element('input', {
    id: name,
    name,
    value: start,
    'aria-describedby': `${name}-hint ${name}-error`,
    ...(type ? { type } : { type: 'number', inputmode: 'decimal', step: String(slider?.[2] ?? 'any') }),
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

/** The one exercise of the form with whole answers: the page shows where each number comes from. */
const itemOf = (plan: Plan) => expandDocument(plan).items[0] as Required<ExpandedPlanItem>;

/** The pressures of the cuff; what they would be, where it is not worn. */
function cuffOf(plan: Plan): Pick<Required<ExpandedPlanItem>, 'occlusion' | 'target'> {
  const { occlusion, target, restriction } = itemOf(plan);
  if (restriction !== 'none') return { occlusion, target };
  const { request } = plan;
  // No exercise of this page has a lower pressure in the rests.
  const exercises = request.exercises.map(
    (exercise) => ({ ...exercise, restriction: 'continuous', restPercentLop: undefined }) as const,
  );
  return cuffOf(planSession({ ...request, exercises }));
}

/** A caution with its severity. */
const cautionItem = ({ severity, text }: Caution): HTMLElement =>
  element('li', { class: severity }, element('strong', {}, words[`severity.${severity}`]!), ` ${text}`);

/** Cautions by whom they are for: those of the person in sight, the others folded away. */
function showCautions(cautions: readonly Caution[]): void {
  for (const audience of ['person', 'practitioner', 'method'] as const satisfies Audience[]) {
    const own = cautions.filter(({ code }) => (audiences[code] ?? 'person') === audience);
    const list = byId(audience === 'person' ? 'cautions' : audience);
    list.replaceChildren(...own.map(cautionItem));
    if (audience === 'person') list.parentElement!.classList.toggle('none', own.length === 0);
    else {
      say(`${audience}-title`, `${words[`page.${audience}`]} (${own.length})`);
      list.parentElement!.hidden = own.length === 0;
    }
  }
}

/** What is said whoever trains: above the numbers, at the end, and what to stop at. */
function showStanding(plan: Plan): void {
  const { disclaimers, stopCriteria } = expandDocument(plan);
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
  // The form always asks for a maximum and a percentage of it.
  const { oneRepMax, load, totals, restriction } = itemOf(plan);
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

  say('prescription', explain(plan, { detail: 'sentence' }).split('\n').join(' '));
  showTrade(plan);
  say('grade', gradeWords(occlusion));
  const { systolicMmHg, diastolicMmHg } = plan.request;
  chart('pressure-chart', (width) =>
    bandChart(
      width,
      `${wide(`Limb occlusion pressure ${occlusionText}`, occlusion, 'mmHg')}. Cuff pressure ${targetText}.`,
      'mmHg',
      [
        { name: 'Limb occlusion pressure (LOP)', look: 'pressure', ...occlusion },
        { name: 'Cuff pressure that you set', look: 'setting', value: target.value },
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
      [
        {
          name: `What share of LOP ${round(target.value, 1)} mmHg may be`,
          look: 'setting',
          value: percentLop,
          lower,
          upper,
        },
      ],
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

/** A session that was kept to compare with. */
let kept: Plan | undefined;
/** The session on the page, while it has answers and no stop. */
let current: Plan | undefined;

/** What a session weighs: its load and its minutes under the cuff, in numbers and words. */
function weigh(plan: Plan) {
  const { load, target, totals } = itemOf(plan);
  const [percentOneRepMax, minutes] = [load.reached!.percentOneRepMax, totals.restrictionTime.value / 60];
  const cuff = minutes === 0 ? 'no cuff' : `${clock(minutes * 60)} min, ${round(target.reached!.percentLop)} % of LOP`;
  return { percentOneRepMax, minutes, load: `${round(load.value, 2)} kg, ${round(percentOneRepMax)} % of 1RM`, cuff };
}

/** The strip: share of 1RM against minutes under the cuff; then what changed since the session that was kept. */
function showTrade(plan: Plan): void {
  const now = weigh(plan);
  const before = kept && weigh(kept);
  // Minutes on a scale of 20, or more where there are more; the two scales have nothing in common.
  const longest = Math.max(20, now.minutes, before?.minutes ?? 0);
  chart('trade', (width) =>
    tradeStrip(
      width,
      `On the joint ${now.load}. Under the cuff ${now.cuff}.`,
      { words: now.load, share: now.percentOneRepMax / 100, kept: before && before.percentOneRepMax / 100 },
      { words: now.cuff, share: now.minutes / longest, kept: before && before.minutes / longest },
    ),
  );
  const place = byId('compared');
  place.hidden = !kept;
  if (kept) place.innerHTML = explain(compareSessions({ from: kept, to: plan }), { format: 'html' });
}

/** A session in a week. */
interface Placed {
  readonly week: number;
  readonly times: number;
  readonly deload: boolean;
  readonly plan: Plan;
}
let placed: readonly Placed[] = [];

function showWeeks(): void {
  say('weeks-error', '');
  byId('planned').replaceChildren(
    ...placed.map((one) => {
      const remove = element('button', { type: 'button', class: 'remove' }, 'Remove');
      remove.addEventListener('click', () => {
        placed = placed.filter((other) => other !== one);
        showWeeks();
      });
      const { week, times, deload, plan } = one;
      const { load, cuff } = weigh(plan);
      const text = `Week ${week}${deload ? ', lighter on purpose' : ''}: ${times} × ${load}; ${cuff}`;
      return element('li', {}, element('span', {}, text), ' ', remove);
    }),
  );
  byId('weeks').hidden = placed.length === 0;
  if (placed.length === 0) return;
  const [first, last] = [Math.min(...placed.map(({ week }) => week)), Math.max(...placed.map(({ week }) => week))];
  const numbers = Array.from({ length: last - first + 1 }, (_, index) => first + index);
  const empty = numbers.filter((week) => !placed.some((one) => one.week === week));
  if (empty.length > 0) {
    byId('weeks').hidden = true;
    say('weeks-error', `Put a session into week ${empty.join(', ')} too.`);
    return;
  }
  const comparison = compareWeeks({
    firstWeek: first,
    weeks: numbers.map((week) => {
      const own = placed.filter((one) => one.week === week);
      return { sessions: own.map(({ plan, times }) => ({ plan, times })), deload: own.some(({ deload }) => deload) };
    }),
  });
  const columns = comparison.weeks.map(({ week, deload = false, planned }) => {
    const limbs = planned!.limbs;
    const most = (values: readonly (number | undefined)[]): number | undefined => {
      const known = values.filter((value) => value !== undefined);
      return known.length > 0 ? Math.max(...known) : undefined;
    };
    return {
      week,
      deload,
      percentOneRepMax: most(limbs.map(({ peakPercentOneRepMax }) => peakPercentOneRepMax?.value)),
      minutes: Math.max(...limbs.map(({ restrictionTime }) => restrictionTime.value / 60)),
      percentLop: most(limbs.flatMap(({ exercises }) => exercises.map(({ percentLop }) => percentLop?.value))),
    };
  });
  const inWords = columns.map(
    ({ week, deload, percentOneRepMax, minutes }) =>
      `week ${week}${deload ? ', lighter on purpose' : ''}: ${percentOneRepMax === undefined ? 'no load' : `${round(percentOneRepMax)} % of 1RM`}, ${minutes === 0 ? 'no cuff' : `${clock(minutes * 60)} min under the cuff`}`,
  );
  chart('weeks-chart', (width) => weeksChart(width, `${inWords.join('; ')}.`, columns));
  byId('weeks-cautions').replaceChildren(...comparison.cautions.map(cautionItem));
  byId('weeks-page').innerHTML = explain(comparison, { format: 'html' });
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
  document.querySelector<HTMLElement>('.prescription')!.hidden = !result.ok || stopped !== '';
  for (const part of document.querySelectorAll<HTMLElement>('.worked')) part.hidden = !result.ok || stopped !== '';
  if (result.ok) showStanding(result.value);
  current = result.ok && stopped === '' ? result.value : undefined;
  say('card-head', [read('date'), read('label'), `${read('side')} ${read('limb')}`].filter(Boolean).join(' · '));
  byId('card').innerHTML = result.ok ? explain(result.value, { detail: 'brief', format: 'html' }) : '';
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
} as const;
for (const [id, code] of Object.entries(headings)) say(`${id}-title`, words[code]);
say('stops-what', words['page.no-settings']!);
// The day of the browser’s own clock.
const now = new Date();
const today = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0'));
(byId('date') as HTMLInputElement).value = today.join('-');
form.addEventListener('input', update);
byId('keep').addEventListener('click', () => {
  kept = current;
  update();
});
byId('add').addEventListener('click', () => {
  if (!current) return;
  const number = (id: string): number => (byId(id) as HTMLInputElement).valueAsNumber;
  const [week, times, deload] = [number('week'), number('times'), byId('deload') as HTMLInputElement];
  if (!Number.isInteger(week) || week < 1 || week > 104 || !Number.isInteger(times) || times < 1 || times > 14) {
    say('weeks-error', 'Give the week as 1 to 104, and how often as 1 to 14, in whole numbers.');
    return;
  }
  placed = [...placed, { week, times, deload: deload.checked, plan: current }].sort((a, b) => a.week - b.week);
  (byId('week') as HTMLInputElement).value = String(week + 1);
  deload.checked = false;
  showWeeks();
});
byId('print').addEventListener('click', () => window.print());
window.addEventListener('resize', () => {
  update();
  showWeeks();
});
form.addEventListener('submit', (event) => event.preventDefault());
update();
