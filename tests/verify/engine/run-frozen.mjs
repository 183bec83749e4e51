import './freeze.mjs';
import { conform } from './conform.mjs';

console.log(JSON.stringify(await conform()));
