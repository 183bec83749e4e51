// Calls a function of cuffwork from any language: JSON on stdin, JSON on stdout.
//   echo '{ "entry": "study", "function": "columns", "arguments": [{ … }] }' | node examples/from-json.mjs
// `entry` is plan, study, explain or equations; leave it out for the main one.
// A missing value is null both ways. A wrong call prints its message on stderr and ends with status 1.
import { stdin } from 'node:process';

const entries = {
  plan: () => import('cuffwork/plan'),
  study: () => import('cuffwork/study'),
  explain: () => import('cuffwork/explain'),
  equations: () => import('cuffwork/equations'),
};
const plain = (_key, value) => (ArrayBuffer.isView(value) ? Array.from(value) : value);

let text = '';
for await (const part of stdin.setEncoding('utf8')) text += part;
try {
  const { entry, function: name, arguments: given } = JSON.parse(text);
  const library = entry === undefined ? await import('cuffwork') : await entries[entry]?.();
  if (typeof library?.[name] !== 'function') throw new Error(`There is no function ${name} in ${entry ?? 'cuffwork'}.`);
  // JSON has no NaN: JSON.stringify writes null.
  console.log(JSON.stringify(library[name](...given), plain));
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
