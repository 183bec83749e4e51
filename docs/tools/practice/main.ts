/* The exercises of the course in a browser: a sheet by its seed, and `checkAnswer` for each number. */
import { checkAnswer } from '../../../src/text/index.js';
import { unitWords } from '../../../src/quantity/format.js';
import { element } from '../../../examples/page/element.js';
import { answerWords, exercises, type Exercise } from '../exercises.js';

const byId = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const list = byId<HTMLOListElement>('exercises');
const seed = byId<HTMLInputElement>('seed');

let right = new Set<string>();

function row({ id, question, answer, working }: Exercise, index: number): HTMLLIElement {
  const field = element('input', { id: `number-${index}`, inputmode: 'decimal', autocomplete: 'off' });
  const result = element('p', { role: 'status', id: `result-${index}` });
  const form = element(
    'form',
    {},
    element('label', { for: field.id }, `Your number,${unitWords[answer.unit]}`),
    field,
    element('button', { type: 'submit' }, 'Check'),
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const given = Number(field.value.trim().replace(',', '.'));
    if (field.value.trim() === '' || !Number.isFinite(given)) {
      result.className = 'wrong';
      result.textContent = 'Type a number, such as 85.';
      return;
    }
    const { verdict, text } = checkAnswer(answer, given);
    result.className = verdict === 'wrong' ? 'wrong' : 'right';
    result.textContent = text;
    if (verdict !== 'wrong') right.add(id);
    byId('score').textContent = `${right.size} of ${list.children.length} right.`;
  });
  const worked = element('details', {}, element('summary', {}, 'Worked answer'));
  worked.append(element('ul', {}, ...working.map((line) => element('li', {}, line))));
  worked.append(element('p', {}, `Answer: ${answerWords(answer)}.`));
  return element('li', {}, element('h2', {}, `${index + 1}. ${question}`), form, result, worked);
}

function show(): void {
  const number = Number(seed.value);
  right = new Set();
  byId('score').textContent = '';
  list.replaceChildren(...exercises(Number.isInteger(number) && number > 0 ? number : 1).map(row));
}

byId('sheet').addEventListener('submit', (event) => {
  event.preventDefault();
  show();
});
byId('other').addEventListener('click', () => {
  seed.value = String((Number(seed.value) % 999_999) + 1);
  show();
});
show();
