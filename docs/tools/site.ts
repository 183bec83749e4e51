/*
 * `npm run docs`: the typed docs and the guides as one site, in `docs/site`. Formulas are typeset here, so that a
 * page loads nothing from another host and runs no script to show one. Whatever is missing fails the build.
 */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { Application, Converter, DocumentReflection, ReflectionKind, ReflectionType, UnknownType } from 'typedoc';
import { fullText } from './llms.js';
import { guides } from './guides.js';
import { formulas } from './typeset.js';

const OUT = 'docs/site';

const app = await Application.bootstrap({
  name: 'cuffwork',
  entryPoints: ['src/index.ts', 'src/plan/index.ts', 'src/schemas.ts', 'src/equations.ts'],
  out: OUT,
  readme: 'docs/README.md',
  projectDocuments: guides.map(({ file }) => file),
  excludeInternal: true,
  disableSources: true,
  validation: { notExported: true, invalidLink: true, invalidPath: true, notDocumented: true },
  requiredToBeDocumented: ['Function', 'Interface', 'TypeAlias', 'Variable', 'Class'],
  // Each is only the list that a public type is made from.
  intentionallyNotExported: [
    'src/answer/messages.ts:answerMessages',
    'src/pressure/measured.ts:measurementMethods',
    'src/pressure/equations.ts:occlusionEquations',
    'src/strength/equations.ts:oneRepMaxEquations',
  ],
  treatWarningsAsErrors: true,
  treatValidationWarningsAsErrors: true,
  groupOrder: ['Documents', 'Modules', 'Functions', 'Variables', 'Classes', 'Interfaces', 'Type Aliases', '*'],
  sort: ['documents-first', 'alphabetical-ignoring-documents'],
  visibilityFilters: {},
  customCss: 'docs/tools/site.css',
  markdownItLoader: formulas,
});

// A guide goes by its title.
app.converter.on(Converter.EVENT_RESOLVE_BEGIN, ({ project }) => {
  for (const document of Object.values(project.reflections)) {
    if (!(document instanceof DocumentReflection)) continue;
    document.name = guides.find(({ name }) => name === document.name)?.title ?? document.name;
  }
  // A catalogue of constants would print its whole contents as its type.
  for (const variable of project.getReflectionsByKind(ReflectionKind.Variable)) {
    if (!variable.isDeclaration() || !(variable.type instanceof ReflectionType)) continue;
    project.removeReflection(variable.type.declaration);
    variable.type = new UnknownType(`typeof ${variable.name}`);
  }
  // Equation files import nothing, so the names that they link to are looked up among all that is public.
  const exported = new Map(
    project
      .getReflectionsByKind(ReflectionKind.SomeExport)
      .filter(({ parent }) => parent?.kindOf(ReflectionKind.SomeModule))
      .map((reflection) => [reflection.name, reflection]),
  );
  for (const { comment } of Object.values(project.reflections)) {
    for (const part of comment ? [comment.summary, ...comment.blockTags.map(({ content }) => content)].flat() : []) {
      const target = part.kind === 'inline-tag' && part.tag === '@link' ? exported.get(part.text) : undefined;
      if (target && part.kind === 'inline-tag') part.target ??= target;
    }
  }
});
const project = await app.convert();
if (project) {
  app.validate(project);
  await app.generateDocs(project, OUT);
  const katex = join(createRequire(import.meta.url).resolve('katex/package.json'), '..', 'dist');
  const modern = (name: string) => !/\.(ttf|woff)$/.test(name);
  cpSync(join(katex, 'fonts'), join(OUT, 'assets/fonts'), { recursive: true, filter: modern });
  const style = join(OUT, 'assets/custom.css');
  writeFileSync(style, readFileSync(join(katex, 'katex.min.css'), 'utf8') + readFileSync(style, 'utf8'));
  cpSync('docs/llms.txt', join(OUT, 'llms.txt'));
  writeFileSync(join(OUT, 'llms-full.txt'), fullText());
}
if (!project || app.logger.hasErrors() || app.logger.hasWarnings()) process.exitCode = 1;
