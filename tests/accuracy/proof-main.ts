import { proveRoom } from '../src/proof/proved-room';
import { slipsOf } from './proof-slips';

/*
 * Proves practice rooms whose settings are typed right, then with every mistake, one at a time, and
 * prints how many were failed and named. Arguments: layout, first seed, number of rooms.
 */
const [name = '5.1', first = '0', count = '10'] = process.argv.slice(2);
const tally = new Map<string, { rooms: number; failed: number; named: number }>();
let falseFails = 0;
let untold = 0;
let lines = 0;
for (let seed = Number(first); seed < Number(first) + Number(count); seed++) {
  const room = await proveRoom(name, seed);
  const right = await room.prove([]);
  falseFails += right.counts.fail;
  untold += right.counts['cannot tell'];
  lines += right.lines.length;
  for (const line of right.lines) {
    if (line.verdict !== 'pass')
      console.log(`seed ${seed}: ${line.verdict}: ${line.id}: ${line.sentence}`);
  }
  for (const { name: slip, slip: made, called, concerns } of slipsOf(room)) {
    const { lines: judged } = await room.prove([made]);
    const failed = judged.filter(({ verdict }) => verdict === 'fail');
    const named = failed.some(
      (line) =>
        line.slip === called &&
        line.changes.some(
          ({ channels, group }) =>
            channels.some((label) => concerns.includes(label)) ||
            (group !== null && concerns.includes(group)),
        ),
    );
    const kind = slip.replace(/^Sub \d/, 'sub').replace(/^.* left on/, 'left on');
    const so = tally.get(kind) ?? { rooms: 0, failed: 0, named: 0 };
    so.rooms++;
    if (failed.length > 0) so.failed++;
    if (named) so.named++;
    tally.set(kind, so);
    if (!named) {
      console.log(`seed ${seed}: ${slip} not named:`);
      for (const line of judged.filter(({ verdict }) => verdict !== 'pass')) {
        console.log(`  ${line.verdict}: ${line.id}: ${line.slip ?? '-'}: ${line.sentence}`);
      }
    }
  }
  console.log(`seed ${seed}: done`);
}
console.log(`typed right: ${lines} lines, ${falseFails} false fails, ${untold} cannot tell`);
for (const [slip, { rooms, failed, named }] of tally) {
  console.log(`${slip}: failed ${failed} of ${rooms}, named ${named} of ${rooms}`);
}
