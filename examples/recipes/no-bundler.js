import { measuredOcclusionPressure, targetCuffPressure } from 'cuffwork';
import { explain } from 'cuffwork/explain';

const occlusion = measuredOcclusionPressure({
  valueMmHg: 172,
  method: 'doppler',
  limb: 'leg',
  side: 'right',
  cuffWidthCm: 10,
  posture: 'seated',
});
const answer = document.getElementById('answer');
if (answer) answer.textContent = explain(targetCuffPressure({ occlusion, percentLop: 50, gaugeStepMmHg: 5 }));
