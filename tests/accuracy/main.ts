import { parseArgs } from 'node:util';
import type { RoomPreset } from '../../dsp/room/draw-room';
import type { Order, Result } from './child';
import { rolloffTables } from './rolloff';
import { roomTables } from './room-tables';
import { shareOut } from './share-out';
import { printTable, type Table } from './table';

const presets: readonly string[] = ['typical', 'live', 'leaky', 'large'] satisfies RoomPreset[];

function isPreset(name: string): name is RoomPreset {
  return presets.includes(name);
}

const { values } = parseArgs({
  options: {
    rooms: { type: 'string', default: '30' },
    preset: { type: 'string', default: 'typical,live,leaky' },
    seed: { type: 'string', default: '1' },
    layout: { type: 'string', default: '5.1.4' },
  },
});

async function main(): Promise<void> {
  const rooms = Number(values.rooms);
  const seed = Number(values.seed);
  const kinds = values.preset.split(',').filter(isPreset);
  if (!(rooms >= 1) || !Number.isFinite(seed) || kinds.length === 0) {
    throw new RangeError(`--rooms N --preset ${presets.join(',')} --seed N --layout 5.1.4`);
  }
  // Each kind has rooms of its own, which share nothing with another's.
  const orders = kinds.flatMap((preset) =>
    Array.from({ length: rooms }, (_, i): Order[] => {
      const order = {
        layout: values.layout,
        preset,
        seed: seed + i + 10000 * presets.indexOf(preset),
      };
      return [
        { ...order, what: 'take' },
        { ...order, what: 'roll-off' },
      ];
    }).flat(),
  );
  const began = performance.now();
  const results = await shareOut(orders, (done) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${orders.length} parts `);
  });
  const tables = kinds.flatMap((preset) => tablesOf(preset, results));
  for (const table of tables) console.log(printTable(table));
  const beyond = tables.flatMap(({ rows }) => rows.filter(({ within }) => !within));
  console.log(
    `${beyond.length} of ${tables.flatMap(({ rows }) => rows).length} figures beyond their limits; ` +
      `${Math.round((performance.now() - began) / 1000)} s.`,
  );
  if (beyond.length > 0) process.exitCode = 1;
}

function tablesOf(preset: RoomPreset, results: readonly Result[]): Table[] {
  const takes = results.flatMap((one) =>
    one.what === 'take' && one.figures.preset === preset ? [one.figures] : [],
  );
  const cases = results.flatMap((one) =>
    one.what === 'roll-off' && one.preset === preset ? one.cases : [],
  );
  return [...roomTables(preset, takes), ...rolloffTables(preset, cases)];
}

await main();
