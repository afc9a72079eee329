import { parseArgs } from 'node:util';
import type { RoomPreset } from '../../dsp/room/draw-room';
import { measureRooms } from './measure-rooms';
import { roomTables } from './room-tables';
import { printTable, type Table } from './table';

const presets: readonly string[] = ['typical', 'live', 'leaky', 'large'] satisfies RoomPreset[];

function isPreset(name: string): name is RoomPreset {
  return presets.includes(name);
}

const { values } = parseArgs({
  options: {
    rooms: { type: 'string', default: '40' },
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
  const orders = kinds.flatMap((preset) =>
    Array.from({ length: rooms }, (_, i) => ({ layout: values.layout, preset, seed: seed + i })),
  );
  const began = performance.now();
  const figures = await measureRooms(orders, (done) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${orders.length} rooms `);
  });
  const tables: Table[] = kinds.flatMap((preset) =>
    roomTables(
      preset,
      figures.filter((one) => one.preset === preset),
    ),
  );
  for (const table of tables) console.log(printTable(table));
  const beyond = tables.flatMap(({ rows }) => rows.filter(({ within }) => !within));
  console.log(
    `${beyond.length} of ${tables.flatMap(({ rows }) => rows).length} figures beyond their limits; ` +
      `${Math.round((performance.now() - began) / 1000)} s.`,
  );
  if (beyond.length > 0) process.exitCode = 1;
}

await main();
