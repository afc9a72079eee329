/*
 * npm run walk [-- --count N --seed N --layout 5.1.4 --verbose]
 *
 * Walks through practice rooms wired right and wrong, a stop at every speaker, and holds what the
 * walk check says against what was done to the wiring. Fails on a fault that is not named, one
 * named wrongly and a false alarm.
 */
import { parseArgs } from 'node:util';
import { drawMiswiring } from '../../src/rig/practice-miswiring';
import type { PracticeFaults } from '../../src/rig/practice-system';
import { layoutFromName } from '../../src/system/layout';
import { isTrouble } from '../../src/trouble';
import { solveWalk } from '../../src/wirecheck/solve-walk';
import { plainFindings } from '../src/wirecheck/plain-finding';
import { walkRoom } from '../src/wirecheck/walk-room';

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '30' },
    seed: { type: 'string', default: '1' },
    layout: { type: 'string', default: '5.1.4' },
    verbose: { type: 'boolean', default: false },
  },
});
const [count, first] = [Number(values.count), Number(values.seed)];
const named = layoutFromName(values.layout);
if (isTrouble(named)) throw new RangeError(named.sentence);
const layout = named;
let wrong = 0;

async function check(name: string, seed: number, faults: PracticeFaults, expected: string[]) {
  const result = solveWalk(await walkRoom(layout, seed, faults), layout);
  const found = plainFindings(result.findings);
  const right = JSON.stringify(found) === JSON.stringify(expected);
  if (!right) wrong++;
  const margin = Math.min(...result.heard.map((one) => one.margin)).toFixed(1);
  const line = `${name.padEnd(10)} ${String(seed).padStart(4)}  margin ${margin.padStart(5)}`;
  if (!right || values.verbose) {
    console.log(`${line}  ${right ? 'right' : 'WRONG'}: ${found.join('; ') || 'nothing'}`);
  }
  if (!right) console.log(`           was: ${expected.join('; ') || 'nothing'}`);
}

for (let k = 0; k < count; k++) {
  // Even seeds: rooms without an inverted speaker of their own.
  const room = 2 * (first + k);
  await check('right', room, {}, []);
  const fault = drawMiswiring(layout, first + k);
  await check(fault.kind, room, fault.faults, plainFindings(fault.findings));
}
console.log(`${2 * count - wrong} of ${2 * count} walks of ${layout.title} told right.`);
if (wrong > 0) process.exitCode = 1;
