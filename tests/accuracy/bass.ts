/*
 * npx tsx tests/accuracy/bass.ts [--rooms 200 --preset typical --seed N]
 *
 * Crossovers, sub alignment and two subs in simulated rooms, held against what a perfect instrument
 * would choose and beside naive ways. Fails when a stated limit is passed.
 */
import { parseArgs } from 'node:util';
import type { RoomPreset } from '../../dsp/room/draw-room';
import { bassTables } from './bass-tables';
import type { Order } from './child';
import { firstReportedSeed } from './seeds';
import { shareOut } from './share-out';
import { printTable } from './table';

const presets: readonly RoomPreset[] = ['typical', 'live', 'leaky', 'large'];

const { values } = parseArgs({
  options: {
    rooms: { type: 'string', default: '200' },
    preset: { type: 'string', default: 'typical' },
    seed: { type: 'string', default: String(firstReportedSeed) },
  },
});

async function main(): Promise<void> {
  const [rooms, seed] = [Number(values.rooms), Number(values.seed)];
  if (!(rooms >= 1) || !Number.isFinite(seed)) {
    throw new RangeError(`--rooms N --preset ${presets.join(',')} --seed N`);
  }
  let beyond = 0;
  for (const name of values.preset.split(',')) {
    const preset = presets.find((one) => one === name);
    if (!preset) throw new RangeError(`--preset takes ${presets.join(', ')}, got ${name}`);
    const orders = Array.from({ length: rooms }, (_, i): Order => ({
      what: 'bass',
      layout: '',
      preset,
      seed: seed + i + 10000 * presets.indexOf(preset),
    }));
    const results = await shareOut(orders, (done) => {
      if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${orders.length} rooms `);
    });
    const figures = results.flatMap((one) => (one.what === 'bass' ? [one.figures] : []));
    for (const table of bassTables(preset, figures)) {
      console.log(printTable(table));
      beyond += table.rows.filter(({ within }) => !within).length;
    }
  }
  console.log(`${beyond} figures beyond their limits.`);
  if (beyond > 0) process.exitCode = 1;
}

await main();
