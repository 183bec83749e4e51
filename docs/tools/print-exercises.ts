/* `npm run exercises -- 7`: a new sheet of exercises, from a seed. */
import { sheet } from './exercises.js';

const [seed = '1'] = process.argv.slice(2);
if (!/^\d+$/.test(seed)) throw new Error(`the seed is a whole number, such as 7; received ${seed}`);
console.log(sheet(Number(seed)));
