/*
 * `npm run docs`: the typed docs and the guides as one site, in `docs/site`. Formulas are typeset here, so that a
 * page loads nothing from another host and runs no script to show one. Whatever is missing fails the build.
 */
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { build, type Plugin } from 'esbuild';
import {
  Application,
  Comment,
  CommentTag,
  Converter,
  DeclarationReflection,
  DocumentReflection,
  IndexEvent,
  KindRouter,
  PageEvent,
  ReferenceType,
  Reflection,
  RendererEvent,
  type DefaultTheme,
  type NavigationElement,
  ReflectionKind,
  ReflectionType,
  type SomeType,
  UnknownType,
} from 'typedoc';
import { escaped } from './escaped.js';
import { fieldTable, type Field } from './fields.js';
import { fullText } from './llms.js';
import { guides } from './guides.js';
import { entryPoints } from './public-names.js';
import { slides } from './slides.js';
import { taskOf, tasks } from './tasks.js';
import { siteMarkdown } from './typeset.js';

const OUT = 'docs/site';

/** Where the files that names are declared in are shown. */
const SOURCES = 'source';
/** Takes the place of the way to the root of the site until a page knows its own place. */
const ROOT = 'to-root:';

const guideOf = (document: Reflection): (typeof guides)[number] | undefined =>
  guides.find(({ name, title }) => [name, title].includes(document.name.split('/').at(-1)!) || title === document.name);

/** Short addresses: guide/cuff-width.html, course/start-here.html, api/targetCuffPressure.html. */
class ShortRouter extends KindRouter {
  protected override getIdealBaseName(reflection: Reflection): string {
    if (reflection instanceof DocumentReflection) return guideOf(reflection)!.address;
    if (reflection.kindOf(ReflectionKind.SomeModule))
      return `api/${reflection.getFriendlyFullName().replaceAll('/', '-')}`;
    return `${reflection.kindOf(ReflectionKind.FunctionOrMethod | ReflectionKind.Variable) ? 'api' : 'type'}/${reflection.name}`;
  }
}

/** What only public types are made from, by the file that declares it. */
const NOT_EXPORTED: Readonly<Record<string, readonly string[]>> = {
  'answer/answer.ts': ['InputsByKind', 'Of', 'OfInterval', 'UncertainKind', 'ShareKind'],
  'answer/audiences.ts': ['cautionAudiences'],
  'answer/codes.ts': [
    'AnswerAssumption',
    'PressureAssumption',
    'StrengthAssumption',
    'SessionAssumption',
    'PlanAssumption',
  ],
  'answer/defined.ts': ['LeftOut'],
  'answer/form.ts': ['where', 'FORM_UNITS'],
  'answer/messages.ts': ['answerMessages'],
  'plan/find-item.ts': ['WithItems'],
  'plan/lighten.ts': ['KEEPS'],
  'plan/measures.ts': ['guidelineNames'],
  'plan/messages.ts': ['planValueWords'],
  'plan/pain.ts': ['PAIN_MOMENTS', 'PAIN_SITES', 'chosen'],
  'plan/proposal.ts': ['PROGRESSION_ACTIONS'],
  'plan/progression-rules.ts': ['NamedRule', 'rules'],
  'plan/questions.ts': ['Replies'],
  'plan/read-back.ts': ['ReadBack'],
  'plan/screening-items.ts': ['SCREENING_OUTCOMES', 'REPLIES'],
  'plan/stage-goals.ts': ['GOAL_MEASURES'],
  'plan/stops.ts': ['WithStops', 'DECIDER_ROLES'],
  'plan/symptoms.ts': ['CodedSymptom', 'rows', 'SYMPTOM_GRADES'],
  'plan/types.ts': ['WholeTotals'],
  'pressure/equations.ts': ['occlusionEquations'],
  'pressure/measured.ts': ['measurementMethods'],
  'quantity/quantities.ts': ['LOAD_UNITS', 'EXERCISE_MODES'],
  'quantity/readings.ts': ['LIMBS', 'SIDES', 'POSTURES', 'SEXES', 'CIRCUMFERENCE_SITES'],
  'quantity/unit-system.ts': ['WrittenUnit', 'UNIT_SYSTEMS'],
  'session/compare.ts': ['LINES'],
  'session/prescription.ts': ['RESTRICTIONS', 'EXERCISE_SIDES'],
  'strength/body-mass.ts': ['MOVEMENTS'],
  'strength/equations.ts': ['oneRepMaxEquations', 'relativeLoadEquations'],
  'strength/lifts.ts': ['LIFTS', 'TRAINING'],
  'strength/repetitions.ts': ['CHARTS'],
  'study/fitted-equation.ts': ['OWN_READINGS', 'TERM_FIELDS'],
  'study/lists.ts': ['Names', 'Numbers'],
  'study/propagate.ts': ['QuantileBounds'],
  'study/reached-columns.ts': ['ReachedPressureColumns', 'ReachedLoadColumns', 'Base'],
  'teaching/messages.ts': ['teachingMessages'],
  'text/page-words.ts': ['pageWords'],
  'text/texts.ts': ['RequirementCode', 'MeasureOf'],
  'text/words.ts': ['receivedWords', 'choiceWords', 'explainWords', 'fieldWords', 'labelWords'],
};

const app = await Application.bootstrap({
  name: 'cuffwork',
  entryPoints: [...entryPoints.values()],
  out: OUT,
  readme: 'docs/README.md',
  projectDocuments: guides.map(({ file }) => file),
  excludeInternal: true,
  includeVersion: true,
  disableGit: true,
  sourceLinkTemplate: `${ROOT}${SOURCES}/{path}.html#L{line}`,
  basePath: '.',
  router: 'short',
  searchInComments: true,
  searchInDocuments: true,
  // Who searches wants a page to read: what keeps people from harm, guides, then functions.
  searchGroupBoosts: {
    ...Object.fromEntries(guides.map(({ group }) => [group, 12])),
    'Before you inflate': 18,
    'Three invented athletes': 4,
    'Look up': 6,
    Course: 8,
    'For maintainers': 1,
    Functions: 3,
    Interfaces: 0.5,
    'Type Aliases': 0.5,
  },
  navigationLinks: {
    Course: `${ROOT}course/start-here.html`,
    Exercises: `${ROOT}exercises/index.html`,
    Worksheet: `${ROOT}worksheet/index.html`,
    Slides: `${ROOT}slides/index.html`,
  },
  validation: { notExported: true, invalidLink: true, invalidPath: true, notDocumented: true },
  requiredToBeDocumented: ['Function', 'Interface', 'TypeAlias', 'Variable', 'Class'],
  intentionallyNotExported: Object.entries(NOT_EXPORTED).flatMap(([file, names]) =>
    names.map((name) => `src/${file}:${name}`),
  ),
  treatWarningsAsErrors: true,
  treatValidationWarningsAsErrors: true,
  groupOrder: [
    ...new Set(guides.map(({ group }) => group)),
    'Modules',
    'Functions',
    'Variables',
    'Classes',
    'Interfaces',
    'Type Aliases',
    '*',
  ],
  sort: ['documents-first', 'alphabetical-ignoring-documents'],
  navigation: { includeGroups: true, includeCategories: true, compactFolders: false },
  categorizeByGroup: true,
  categoryOrder: [...tasks],
  visibilityFilters: {},
  hideGenerator: true,
  lightHighlightTheme: 'github-light-high-contrast',
  darkHighlightTheme: 'github-dark-high-contrast',
  customCss: 'docs/tools/site.css',
  highlightLanguages: ['typescript', 'tsx', 'javascript', 'json', 'bash', 'html', 'sql'],
  markdownItLoader: siteMarkdown,
});

app.renderer.defineRouter('short', ShortRouter);

const text = (words: string) => [{ kind: 'text' as const, text: words }];
/** Puts a tag on the comment of a reflection. */
function tag(reflection: Reflection, name: `@${string}`, words: string): void {
  (reflection.comment ??= new Comment()).blockTags.push(new CommentTag(name, text(words)));
}
const plainWords = (comment: Comment | undefined): string =>
  (comment?.summary ?? []).map(({ text: words }) => words).join('');

/** Fields of an input, where its type is an interface or an object. */
function fieldsOf(type: SomeType | undefined): Field[] {
  const reflection = type instanceof ReferenceType ? type.reflection : undefined;
  const declared = reflection instanceof DeclarationReflection ? reflection : undefined;
  const children =
    declared?.children ?? (declared?.type instanceof ReflectionType ? declared.type.declaration.children : undefined);
  return (children ?? [])
    .filter((child) => child.kindOf(ReflectionKind.Property))
    .map((child) => ({
      name: child.name,
      type: child.type?.toString() ?? '',
      optional: child.flags.isOptional,
      comment: plainWords(child.comment),
    }));
}

// A guide goes by its title, under the heading of the front page; a name goes under its task.
app.converter.on(Converter.EVENT_RESOLVE_BEGIN, ({ project }) => {
  for (const document of Object.values(project.reflections)) {
    if (!(document instanceof DocumentReflection)) continue;
    const guide = guideOf(document);
    if (!guide) continue;
    document.name = guide.title;
    document.frontmatter['group'] = guide.group;
  }
  for (const reflection of project.getReflectionsByKind(ReflectionKind.SomeExport)) {
    if (!(reflection instanceof DeclarationReflection) || !reflection.parent?.kindOf(ReflectionKind.SomeModule))
      continue;
    const file = reflection.sources?.[0]?.fileName ?? '';
    const holders: readonly Reflection[] = reflection.signatures ?? [reflection];
    for (const holder of holders) tag(holder, '@category', taskOf(file));
    for (const signature of reflection.signatures ?? []) {
      const fields = fieldsOf(signature.parameters?.[0]?.type);
      if (fields.length > 1)
        (signature.comment ??= new Comment()).blockTags.unshift(new CommentTag('@fields', text(fieldTable(fields))));
    }
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

// A field is found in its table. Who types “cuff width” means correctForCuffWidth too.
app.renderer.on(IndexEvent.PREPARE_INDEX, (event) => {
  for (let at = event.searchResults.length - 1; at >= 0; at -= 1)
    if (event.searchResults[at]!.kindOf(ReflectionKind.Property)) event.removeResult(at);
  event.searchFieldWeights['words'] = 8;
  for (const [at, { name }] of event.searchResults.entries())
    event.searchFields[at] = { ...event.searchFields[at], words: name.replaceAll(/(?<=[a-z\d])(?=[A-Z])/g, ' ') };
});

/** Functions by name, with their pages: for the links of the guides. */
const pagesOfNames = new Map<string, string>();
app.renderer.on(RendererEvent.BEGIN, ({ pages }) => {
  for (const { model, url } of pages) {
    if (model instanceof DeclarationReflection && model.kindOf(ReflectionKind.Function))
      pagesOfNames.set(model.name, url);
  }
});

/** Code that names a function leads to its page, outside of blocks and links. */
const linked = (html: string, root: string): string =>
  html
    .split(/(<pre[\s\S]*?<\/pre>|<a [\s\S]*?<\/a>)/)
    .map((part) =>
      /^<(pre|a )/.test(part)
        ? part
        : part.replaceAll(/<code>(\w+)<\/code>/g, (code, name: string) => {
            const url = pagesOfNames.get(name);
            return url ? `<a href="${root}${url}">${code}</a>` : code;
          }),
    )
    .join('');

const way = (href: string, rel: string, words: string): string =>
  `<a href="${href}" rel="${rel}">${escaped(words)}</a>`;
/** The guides before and after one. */
function ways(index: number, root: string): string {
  const [before, after] = [guides[index - 1], guides[index + 1]];
  const parts = [
    before && way(`${root}${before.address}.html`, 'prev', `← ${before.title}`),
    after && way(`${root}${after.address}.html`, 'next', `${after.title} →`),
  ];
  return `<nav class="ways" aria-label="Next and previous page">${parts.filter(Boolean).join('')}</nav>`;
}
/** The guides that speak of a function. */
function readMore(name: string, root: string): string {
  const about = guides.filter(
    ({ text: page, group }) => group !== 'For maintainers' && new RegExp(`\\b${name}\\(|\`${name}\``).test(page),
  );
  const items = about.map(({ address, title }) => `<li>${way(`${root}${address}.html`, 'help', title)}</li>`);
  return items.length === 0
    ? ''
    : `<section class="tsd-panel in-guides"><h2>In the guides</h2><ul>${items.join('')}</ul></section>`;
}

/** The table of an input’s fields goes with the parameters, before what is returned. */
const fieldsFirst = (html: string): string =>
  html.replaceAll(
    /(<h4 class="tsd-returns-title">(?:(?!<h4 class="tsd-returns-title">)[\s\S])*?)(<div class="tsd-tag-fields">[\s\S]*?<\/table><\/div>\s*<\/div>)/g,
    (_all, returned: string, table: string) => `<div class="tsd-comment tsd-typography">${table}</div>${returned}`,
  );

// What the theme leaves to be wished for by a screen reader: landmarks, and no link within what folds and unfolds.
app.renderer.on(PageEvent.END, (page) => {
  if (page.contents === undefined) return;
  const root = '../'.repeat(page.url.split('/').length - 1);
  page.contents = page.contents
    .replace('<div class="col-content">', '<div class="col-content" role="main">')
    .replace('<div class="col-sidebar">', '<div class="col-sidebar" role="complementary" aria-label="About this page">')
    .replaceAll(/<summary[\s\S]*?<\/summary>/g, (summary) =>
      summary.replaceAll(/<a [^>]*aria-label="Permalink"[\s\S]*?<\/a>/g, ''),
    )
    .replace('<nav id="tsd-sidebar-links"', '<nav id="tsd-sidebar-links" aria-label="Course and tools"')
    .replaceAll(ROOT, root);
  const { model } = page;
  const index = model instanceof DocumentReflection ? guides.indexOf(guideOf(model)!) : -1;
  const end = /(<\/div>\s*<div class="col-sidebar")/;
  if (index >= 0)
    page.contents = linked(page.contents, root).replace(
      end,
      () => `${ways(index, root)}</div><div class="col-sidebar"`,
    );
  else if (model instanceof DeclarationReflection && model.kindOf(ReflectionKind.Function))
    page.contents = fieldsFirst(page.contents).replace(
      end,
      () => `${readMore(model.name, root)}</div><div class="col-sidebar"`,
    );
  // The sheet of the course leads to the same exercises with a box for your number.
  if (page.url === 'course/exercises.html')
    page.contents = page.contents.replace(
      /On the <a [^>]*>site of these docs<\/a> you can do them in the browser/,
      `On this site you can <a href="${root}exercises/index.html">do them in the browser</a>`,
    );
  if (page.url === 'index.html') page.contents = linked(page.contents, root);
  // The front page and the guides have a title of their own.
  if (index >= 0 || page.url === 'index.html')
    page.contents = page.contents.replace(/<div class="tsd-page-title">[\s\S]*?<\/div>/, '');
  // A long name breaks between its words.
  page.contents = page.contents.replace(/<h1>[^<]*<\/h1>/, (title) =>
    title.replaceAll(/(?<=[a-z\d])(?=[A-Z])/g, '<wbr>'),
  );
});

/** A file of the library as a page, each line with its number. */
function sourcePage(file: string): string {
  const lines = readFileSync(file, 'utf8').trimEnd().split('\n');
  const rows = lines.map(
    (line, at) => `<span id="L${at + 1}"><b>${String(at + 1).padStart(4)}</b>  ${escaped(line)}</span>`,
  );
  return `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<meta name="color-scheme" content="light dark"><title>${file}</title>
<style>body{font:14px ui-monospace,monospace;margin:1rem}main{overflow-x:auto}:target{background:#ffe9a8;color:#000}</style>
<h1 style="font-size:1rem">${file}</h1><main tabindex="0" aria-label="source"><pre>${rows.join('\n')}</pre></main></html>\n`;
}
function writeSources(): void {
  for (const name of readdirSync('src', { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.ts')) continue;
    const to = join(OUT, SOURCES, `${name}.html`);
    mkdirSync(dirname(to), { recursive: true });
    writeFileSync(to, sourcePage(join('src', name)));
  }
}
/** The package by its own name, from its sources. */
const ownPackage: Plugin = {
  name: 'own-package',
  setup: ({ onResolve }) =>
    onResolve({ filter: /^cuffwork(\/|$)/ }, ({ path }) => ({
      path: resolve(entryPoints.get(path) ?? path.replace('cuffwork/checks/', 'src/checks/')),
    })),
};
/** What the search asks the index for, by what is typed: words before beginnings, without small words. */
const SEARCH = `(text => {
  const words = text.split(/[^\\p{L}\\p{N}.]+/u).filter(Boolean);
  const small = /^(an?|and|at|by|do|for|how|i|in|is|it|me|my|of|on|or|the|to|too|what|with)$/i;
  const large = words.filter((word) => !small.test(word));
  return (large.length > 0 ? large : words).map((word) => word + '^3 ' + word + '*').join(' ');
})`;
/**
 * The theme asks for any part of any word, so that “percent of LOP” finds all that has “of” in a word. Such a query
 * also throws on some words, “30” among them.
 */
function mendSearch(): void {
  const file = join(OUT, 'assets/main.js');
  const script = readFileSync(file, 'utf8');
  const mended = script.replace(
    /(\w+)\.split\(" "\)\.map\((\w+)=>\2\.length\?`\*\$\{\2\}\*`:""\)\.join\(" "\)/,
    (_all, typed: string) => `${SEARCH}(${typed})`,
  );
  if (mended === script) app.logger.error('The search of the theme is written another way now: see mendSearch.');
  writeFileSync(file, mended);
}
/** The worksheet to play with, and the exercises that check a number: pages with a script of their own. */
async function writePlaygrounds(): Promise<void> {
  const places = { worksheet: 'examples/page', exercises: 'docs/tools/practice' };
  for (const [name, from] of Object.entries(places)) {
    const to = join(OUT, name);
    await build({
      entryPoints: ['index.html', 'style.css', 'main.ts'].map((file) => join(from, file)),
      bundle: true,
      minify: true,
      target: 'es2022',
      loader: { '.html': 'copy' },
      plugins: [ownPackage],
      outdir: to,
      logLevel: 'error',
    });
    const page = join(to, 'index.html');
    const back = '<p style="margin:0.5rem 1rem"><a href="../index.html">cuffwork: the docs</a></p>';
    writeFileSync(
      page,
      readFileSync(page, 'utf8')
        .replace('<header>', `<header>${back}`)
        // A page opened as a file may run no module.
        .replace('<script type="module"', '<script defer'),
    );
  }
}

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
  writeSources();
  mendSearch();
  await writePlaygrounds();
  mkdirSync(join(OUT, 'slides'), { recursive: true });
  writeFileSync(join(OUT, 'slides/index.html'), slides());
}
if (!project || app.logger.hasErrors() || app.logger.hasWarnings()) process.exitCode = 1;
