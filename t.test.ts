import { it } from 'vitest';
import jstat from 'jstat';
import { studentT95 } from './src/study/student-t.js';
it('x', () => { for (const v of [1,2,3,4,5,6,10,15,16,30,31,100,999,1000,1001,5000]) console.log(v, studentT95(v), (jstat as any).studentt.inv(0.975, v)); });
