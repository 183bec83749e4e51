/* Slides made from the pictures: one page of HTML that needs no other file, and prints one slide a sheet. */
import { escaped } from './escaped.js';
import { pictures } from './pictures.js';

/** A number stays with its percent sign. */
const words = (text: string): string => escaped(text).replaceAll(' %', '\u00a0%');

/** What a picture says in words, from its own description. */
export const pictureWords = (svg: string): string => /<desc[^>]*>([\s\S]*?)<\/desc>/.exec(svg)![1]!;
const pictureTitle = (svg: string): string => /<title[^>]*>([\s\S]*?)<\/title>/.exec(svg)![1]!;

/** An SVG within a page: its ids are its own, whatever other pictures are there. */
const inlined = (name: string, svg: string): string =>
  svg
    // The picture is one image with a name; its parts need none.
    .replaceAll(/<g([^>]*?) aria-label="[^"]*"/g, '<g$1')
    .replaceAll(/id="(title|description)"/g, `id="${name}-$1"`)
    .replace('aria-labelledby="title description"', `aria-labelledby="${name}-title ${name}-description"`);

const TEXTS: readonly (readonly [string, readonly string[]])[] = [
  [
    'Restriction training in numbers',
    [
      'Light loads, 20–40 % of 1RM, with a cuff that partly restricts blood flow.',
      'Three numbers: pressure (percent of LOP), load (percent of 1RM), dose (sets and time).',
      'cuffwork calculates. It does not give medical clearance.',
    ],
  ],
  [
    'Measure first',
    [
      'A LOP belongs to one limb, one cuff, one posture, one day.',
      'Measured 172 mmHg, 50 %, gauge steps of 5 mmHg: set 85 mmHg. True share 45–55 % (95 % interval).',
      'Estimated 215 mmHg: 95 % interval 139–332 mmHg. Stay low, and measure soon.',
    ],
  ],
  [
    'Why it may work',
    [
      'Likely: it tires the muscle early, so that more fibres have to work.',
      'Not the cause: growth hormone rises about 290 times, and does not go with the gain (29 men, 8 weeks).',
      'Heavy loads build more strength: +34 ± 20 % against +14 ± 5 % of 1RM (18 people, 6 weeks).',
    ],
  ],
];

/** All slides. */
export function slides(): string {
  const texts = TEXTS.map(
    ([title, lines]) =>
      `<section><h2>${words(title)}</h2><ul>${lines.map((line) => `<li>${words(line)}</li>`).join('')}</ul></section>`,
  );
  const drawn = pictures().map(
    ([name, svg]) =>
      `<section class="drawn"><h2>${pictureTitle(svg)}</h2>${inlined(name, svg)}<details><summary>In words</summary><p>${pictureWords(svg)}</p></details></section>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>cuffwork: slides</title>
<style>
body{background:#fdfcf9;color:#23272b;font:1.25rem/1.5 system-ui,sans-serif;margin:0}
section{box-sizing:border-box;display:flex;flex-direction:column;justify-content:center;margin:0 auto;max-width:72rem;padding:2rem 1.5rem}
section+section{border-top:1px solid #8886}
ul{font-size:clamp(1.25rem,2.6vw,2.1rem);margin:0}
li+li{margin-top:.6em}
@media(min-width:48rem){section{min-height:100vh}}
svg{height:auto;max-height:78vh;width:100%}
/* A picture shows its title itself. */
.drawn h2{clip-path:inset(50%);position:absolute}
h1,h2{line-height:1.2}
h2{font-size:clamp(1.6rem,3.6vw,3rem);margin:0 0 .8em}
summary,p{font-size:1rem}
@media(prefers-color-scheme:dark){body{background:#171b1f;color:#e7e4dd}a{color:#6fd6cf}}
@media print{section{break-after:page;min-height:0}details,header{display:none}}
</style>
</head>
<body>
<header><p style="margin:1rem"><a href="../index.html">cuffwork: the docs</a> Print this page for one slide a sheet. Licence MIT: free to use and to change.</p></header>
<main><h1 style="margin:1rem">cuffwork: slides</h1>
${[...texts, ...drawn].join('\n')}
</main>
</body>
</html>
`;
}
