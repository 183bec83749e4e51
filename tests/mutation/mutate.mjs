// The mutation score of one area or more: `npm run mutate -- quantity session`. Without a name, of all; of one file of an
// area, while you write tests for it: `npm run mutate -- plan:stops`.
import { spawn } from 'node:child_process';
import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const ENDLESS_MS = 30_000;
const LEAST = 90;
/** Processor time that tests are given for a mutant in one file, unless its area says otherwise. */
const PATIENCE_MS = 300;
const root = fileURLToPath(new URL('../..', import.meta.url));
const { areas } = JSON.parse(readFileSync(`${root}/tests/mutation/areas.json`, 'utf8'));
const asked = process.argv.slice(2);
const names = asked.length > 0 ? asked : Object.keys(areas);
const areaOf = (name) => name.split(':')[0];
for (const name of names)
  if (!areas[areaOf(name)]) throw new Error(`${name} is none of ${Object.keys(areas).join(', ')}`);

/** One run of the tests; ended where a mutant never ends, which is then left out. */
const run = (name, log) =>
  new Promise((done) => {
    const args = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/mutation/vitest.config.ts'];
    const patience = process.env.MUTATION_PATIENCE_MS ?? areas[areaOf(name)].patienceMs ?? PATIENCE_MS;
    const env = {
      ...process.env,
      MUTATE: areaOf(name),
      MUTATE_FILE: name.split(':')[1] ?? '',
      MUTATION_LOG: log,
      MUTATION_PATIENCE_MS: patience,
      NO_COLOR: '1',
      NODE_NO_WARNINGS: '1',
    };
    // A group of its own: a mutant that never ends runs in a process of vitest’s, which must end with it.
    const child = spawn(process.execPath, args, {
      cwd: root,
      env,
      detached: true,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const started = Date.now();
    const end = () => process.kill(-child.pid, 'SIGKILL');
    const stop = () => (end(), process.exit(1));
    process.once('SIGINT', stop).once('SIGTERM', stop);
    let message = '';
    // Vitest says what it could not load on stderr.
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (message += text));
    const watch = setInterval(() => {
      const tried = new Map();
      for (const line of readFileSync(log, 'utf8').split('\n')) {
        const [kind, id, mutant, since] = line.split('\t');
        if (kind === 'try') tried.set(id.split(' ')[0], { mutant, since: Number(since) });
        if (kind === 'over') tried.delete(id.split(' ')[0]);
      }
      // What an earlier run was trying as it ended is tried again.
      const endless = [...tried.values()].filter(({ since }) => since > started && Date.now() - since > ENDLESS_MS);
      if (endless.length === 0) return;
      for (const { mutant } of endless) appendFileSync(log, `endless\t${mutant}\n`);
      end();
    }, 1000);
    child.on('exit', (code) => {
      clearInterval(watch);
      process.off('SIGINT', stop).off('SIGTERM', stop);
      done({ code, message });
    });
  });

let low = false;
mkdirSync(`${root}/coverage/mutation`, { recursive: true });
for (const name of names) {
  const log = `${root}/coverage/mutation/${name.replace(/[/:]/g, '-')}.log`;
  const started = Date.now();
  writeFileSync(log, '');
  let ended = await run(name, log);
  // What a mutant left behind ends in its process: what it kept from being measured is measured in a new one.
  const spoilt = () => readFileSync(log, 'utf8').match(/^spoilt\t/gm)?.length ?? 0;
  for (let before = 0; ended.code === null || spoilt() > before; ended = await run(name, log)) before = spoilt();
  // A test that fails without any mutant, or a file that cannot be loaded, makes the score worthless.
  if (/^broken\t/m.test(readFileSync(log, 'utf8')) || ended.message.includes('Failed Suites')) {
    console.error(ended.message);
    process.exit(1);
  }

  const seen = { met: new Set(), loaded: new Set(), killed: new Set(), endless: new Set(), spoilt: new Set() };
  let slow = 0;
  for (const line of readFileSync(log, 'utf8').split('\n')) {
    const [kind, first, ...more] = line.split('\t');
    if (kind === 'met' || kind === 'loaded') for (const id of [first, ...more]) seen[kind].add(id);
    else if (seen[kind]) seen[kind].add(first);
    if (kind === 'slow') slow += 1;
  }
  const mutants = JSON.parse(readFileSync(`${log}.mutants.json`, 'utf8'));
  const state = ({ id, status }) =>
    status === 'Ignored'
      ? 'left out'
      : seen.killed.has(id)
        ? 'killed'
        : seen.endless.has(id)
          ? 'endless'
          : seen.met.has(id)
            ? 'lives'
            : seen.loaded.has(id)
              ? 'at load'
              : 'not met';
  const count = { killed: 0, endless: 0, lives: 0, 'not met': 0, 'at load': 0, 'left out': 0 };
  const files = {};
  for (const mutant of mutants) {
    const now = state(mutant);
    count[now] += 1;
    const file = relative(root, mutant.fileName);
    files[file] ??= { ...count, killed: 0, endless: 0, lives: 0, 'not met': 0, 'at load': 0, 'left out': 0 };
    files[file][now] += 1;
    if (now === 'lives' || now === 'not met') {
      const { line, column } = mutant.location.start;
      console.log(
        `${now}: ${file}:${line + 1}:${column + 1} ${mutant.mutatorName}: ${mutant.replacement.replace(/\s+/g, ' ')}`,
      );
    }
  }
  const score = (of) => (100 * (of.killed + of.endless)) / (of.killed + of.endless + of.lives + of['not met']);
  for (const [file, of] of Object.entries(files)) console.log(`${score(of).toFixed(1)} % ${file}`);
  const minutes = ((Date.now() - started) / 60_000).toFixed(1);
  console.log(
    `${name}: ${score(count).toFixed(1)} %`,
    count,
    `${slow} tests too slow, ${seen.spoilt.size} spoilt, ${minutes} min`,
  );
  // Without any mutant the score is no number, and no score.
  if (score(count) >= LEAST) continue;
  console.error(`${name}: below the ${LEAST} % that are asked`);
  low = true;
}
process.exit(low ? 1 : 0);
