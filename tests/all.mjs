// `npm test`: what must be right before the tests run, two at a time, then the tests. The build checks the types of
// `src`.
import { spawn } from 'node:child_process';

/** Runs one command of package.json, or of a package; what it prints is shown when it ends. */
const run = (command, stdio = 'pipe') =>
  new Promise((resolve, reject) => {
    const child = spawn(command, { shell: true, stdio: ['ignore', stdio, stdio] });
    let printed = '';
    for (const stream of [child.stdout, child.stderr]) stream?.on('data', (text) => (printed += text));
    child.on('close', (status) => {
      process.stdout.write(printed);
      if (status === 0) resolve();
      else reject(new Error(`${command}: ended with ${status}`));
    });
  });
const script = (name) => run(`npm run --silent ${name}`);
/** Waits for both, so that nothing still writes when this ends. */
const both = async (...steps) => {
  for (const { reason } of await Promise.allSettled(steps)) if (reason) throw reason;
};

try {
  await both(script('lint'), script('build'));
  await both(
    script('typecheck:tests'),
    script('examples').then(() => script('package')),
  );
  await run(`npx vitest run --config tests/vitest.config.ts ${process.argv.slice(2).join(' ')}`, 'inherit');
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
