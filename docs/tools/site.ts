/*
 * `npm run docs`: the typed docs and the guides as one site, in `docs/site`. Formulas are typeset here, so that a
 * page loads nothing from another host and runs no script to show one. Whatever is missing fails the build.
 */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import {
  Application,
  Converter,
  DocumentReflection,
  PageEvent,
  RendererEvent,
  type DefaultTheme,
  type NavigationElement,
  ReflectionKind,
  ReflectionType,
  UnknownType,
} from 'typedoc';
import { fullText } from './llms.js';
import { guides } from './guides.js';
import { entryPoints } from './public-names.js';
import { siteMarkdown } from './typeset.js';

const OUT = 'docs/site';

const app = await Application.bootstrap({
  name: 'cuffwork',
  entryPoints: [...entryPoints.values()],
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
    'src/strength/equations.ts:relativeLoadEquations',
    'src/strength/body-mass.ts:MOVEMENTS',
    'src/strength/lifts.ts:LIFTS',
    'src/strength/lifts.ts:TRAINING',
    'src/strength/repetitions.ts:CHARTS',
    'src/plan/progression-rules.ts:rules',
    'src/plan/stops.ts:DECIDER_ROLES',
    'src/plan/screening-messages.ts:dayMessages',
    'src/plan/screening-messages.ts:conditionMessages',
    'src/plan/pain.ts:PAIN_MOMENTS',
    'src/plan/pain.ts:PAIN_SITES',
    'src/plan/pain.ts:chosen',
    'src/plan/types.ts:PROGRESSION_ACTIONS',
    'src/plan/symptoms.ts:rows',
    'src/plan/questions.ts:Replies',
    'src/study/lists.ts:Numbers',
    'src/study/fitted-equation.ts:TERM_FIELDS',
  ],
  treatWarningsAsErrors: true,
  treatValidationWarningsAsErrors: true,
  groupOrder: ['Documents', 'Modules', 'Functions', 'Variables', 'Classes', 'Interfaces', 'Type Aliases', '*'],
  sort: ['documents-first', 'alphabetical-ignoring-documents'],
  navigation: { includeGroups: true, compactFolders: false },
  visibilityFilters: {},
  hideGenerator: true,
  lightHighlightTheme: 'github-light-high-contrast',
  darkHighlightTheme: 'github-dark-high-contrast',
  customCss: 'docs/tools/site.css',
  markdownItLoader: siteMarkdown,
});

// A guide goes by its title.
app.converter.on(Converter.EVENT_RESOLVE_BEGIN, ({ project }) => {
  for (const document of Object.values(project.reflections)) {
    if (!(document instanceof DocumentReflection)) continue;
    document.name = guides.find(({ name }) => name === document.name.split('/').at(-1))?.title ?? document.name;
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
/** A branch that folds is no link as well; its own page becomes its first leaf. */
const unlinked = ({ path, children, ...branch }: NavigationElement): NavigationElement => {
  if (!children) return path === undefined ? branch : { ...branch, path };
  const page = path === undefined ? [] : [{ text: 'overview', path }];
  return { ...branch, children: [...page, ...children.map(unlinked)] };
};
app.renderer.on(RendererEvent.BEGIN, () => {
  const theme = app.renderer.theme as DefaultTheme;
  const build = theme.buildNavigation.bind(theme);
  theme.buildNavigation = (project) => build(project).map(unlinked);
});

// What the theme leaves to be wished for by a screen reader: landmarks, and no link within what folds and unfolds.
app.renderer.on(PageEvent.END, (page) => {
  if (page.contents === undefined) return;
  page.contents = page.contents
    .replace('<div class="col-content">', '<div class="col-content" role="main">')
    .replace('<div class="col-sidebar">', '<div class="col-sidebar" role="complementary" aria-label="About this page">')
    .replaceAll(/<summary[\s\S]*?<\/summary>/g, (summary) =>
      summary.replaceAll(/<a [^>]*aria-label="Permalink"[\s\S]*?<\/a>/g, ''),
    );
  // The front page has a title of its own.
  if (page.url === 'index.html')
    page.contents = page.contents.replace(/<div class="tsd-page-title">[\s\S]*?<\/div>/, '');
});

const project = await app.convert();
if (project) {
  app.validate(project);
  await app.generateDocs(project, OUT);
  const katex = join(createRequire(import.meta.url).resolve('katex/package.json'), '..', 'dist');
  const modern = (name: string) => !/\.(ttf|woff)$/.test(name);
  cpSync(join(katex, 'fonts'), join(OUT, 'assets/fonts'), { recursive: true, filter: modern });
  const style = join(OUT, 'assets/custom.css');
  // A formula is read at once, and gets its letters when they are there.
  const letters = readFileSync(join(katex, 'katex.min.css'), 'utf8').replaceAll(
    'font-display:block',
    'font-display:swap',
  );
  writeFileSync(style, letters + readFileSync(style, 'utf8'));
  cpSync('docs/llms.txt', join(OUT, 'llms.txt'));
  writeFileSync(join(OUT, 'llms-full.txt'), fullText());
}
if (!project || app.logger.hasErrors() || app.logger.hasWarnings()) process.exitCode = 1;
