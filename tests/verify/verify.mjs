// Every gate that takes minutes. `--allow-missing` lets an engine be missing; other arguments go to vitest.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const given = process.argv.slice(2);
const args = given.filter((argument) => argument !== '--allow-missing');
if (args.length < given.length) process.env.ALLOW_MISSING = '1';
const vitest = fileURLToPath(new URL('../../node_modules/vitest/vitest.mjs', import.meta.url));
const config = fileURLToPath(new URL('vitest.config.ts', import.meta.url));
const { status } = spawnSync(process.execPath, [vitest, 'run', '--config', config, ...args], { stdio: 'inherit' });
process.exit(status ?? 1);
