import { parseArgs } from 'node:util';
import type { RoomPreset } from '../../dsp/room/draw-room';
import { measureRolloffRooms, rolloffTables } from './rolloff';
import { printTable } from './table';

const presets: readonly RoomPreset[] = ['typical', 'live', 'leaky', 'large'];

const { values } = parseArgs({
  options: {
    rooms: { type: 'string', default: '40' },
    preset: { type: 'string', default: 'typical,leaky' },
    seed: { type: 'string', default: '1' },
  },
});

for (const name of values.preset.split(',')) {
  const preset = presets.find((one) => one === name);
  if (!preset) throw new RangeError(`--preset takes ${presets.join(', ')}, got ${name}`);
  const cases = measureRolloffRooms(preset, Number(values.rooms), Number(values.seed), (done) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${done} ${preset} rooms `);
  });
  for (const table of rolloffTables(preset, cases)) console.log(printTable(table));
}
