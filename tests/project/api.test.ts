import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { CompilerState, Extractor, ExtractorConfig, ExtractorLogLevel } from '@microsoft/api-extractor';
import { afterAll, describe, expect, it } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };

/** Every entry point that has types: its name, its declarations, the report that is committed. */
const entries = Object.entries(manifest.exports).flatMap(([path, target]) =>
  typeof target === 'object'
    ? [
        {
          name: join('cuffwork', path),
          types: target.import.types,
          report: `${join('cuffwork', path).replaceAll('/', '-')}.api.md`,
        },
      ]
    : [],
);

const committed = readdirSync('tests/project/api').sort();

describe('the public interface', () => {
  const folder = mkdtempSync(join(tmpdir(), 'cuffwork-api-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const configOf = (types: string, name: string) =>
    ExtractorConfig.prepare({
      configObjectFullPath: undefined,
      packageJsonFullPath: resolve('package.json'),
      configObject: {
        projectFolder: resolve('.'),
        mainEntryPointFilePath: resolve(types),
        newlineKind: 'lf',
        compiler: {
          overrideTsconfig: {
            compilerOptions: {
              target: 'es2022',
              module: 'esnext',
              moduleResolution: 'bundler',
              strict: true,
              skipLibCheck: true,
              types: [],
            },
            files: [resolve(types)],
          },
        },
        apiReport: {
          enabled: true,
          reportFileName: name,
          reportFolder: folder,
          reportTempFolder: join(folder, 'made'),
        },
        docModel: { enabled: false },
        dtsRollup: { enabled: false },
        tsdocMetadata: { enabled: false },
        messages: {
          extractorMessageReporting: { default: { logLevel: ExtractorLogLevel.None } },
          tsdocMessageReporting: { default: { logLevel: ExtractorLogLevel.None } },
        },
      },
    });
  let compilerState: CompilerState | undefined;
  function reportOf(types: string, name: string): string {
    const config = configOf(types, name);
    // One program for all of them.
    compilerState ??= CompilerState.create(config, {
      additionalEntryPoints: entries.map((entry) => resolve(entry.types)),
    });
    Extractor.invoke(config, {
      compilerState,
      localBuild: true,
      messageCallback: (message) => (message.handled = true),
    });
    return readFileSync(join(folder, 'made', name), 'utf8');
  }

  // A difference here is a change of what users see: `npm run api` accepts it; then say it in the changelog.
  it.each(entries)(
    'of $name is the one that was accepted (`npm run api` accepts a change)',
    async ({ types, report }) => {
      await expect(reportOf(types, report)).toMatchFileSnapshot(`api/${report}`);
    },
  );

  it('is reported for every entry point, and for no other', () => {
    expect(committed).toEqual(entries.map(({ report }) => report).sort());
  });
});
