import { parseArgs } from 'node:util';
import type { RoomPreset } from '../../dsp/room/draw-room';
import { bassTables } from './bass-tables';
import type { Order, Result } from './child';
import { decayTables } from './decay-tables';
import { distortionTables } from './distortion-tables';
import { rolloffTables } from './rolloff';
import { roomTables } from './room-tables';
import { firstReportedSeed, firstTuningSeed, seedsOfAKind } from './seeds';
import { shareOut } from './share-out';
import { subLevelTable } from './sub-level-table';
import { printTable, type Table } from './table';

const presets: readonly string[] = ['typical', 'live', 'leaky', 'large'] satisfies RoomPreset[];

/** Decay and distortion take whole responses of several places: they are read in every 24th room. */
const dear = 24;
/** Subs are in no brief take: every eighth room is asked for the level of one. */
const subsEvery = 8;
/** Crossovers and alignment are asked of 67 rooms of each kind, 201 in all, and judged together. */
const bassOf500 = 67;

function isPreset(name: string): name is RoomPreset {
  return presets.includes(name);
}

const { values } = parseArgs({
  options: {
    rooms: { type: 'string', default: '500' },
    preset: { type: 'string', default: 'typical,live,leaky' },
    seed: { type: 'string', default: String(firstReportedSeed) },
    layout: { type: 'string', default: '5.1.4' },
    takes: { type: 'string', default: 'brief' },
    ask: { type: 'string', default: 'take,sub-level,roll-off,decay,distortion,bass' },
  },
});

async function main(): Promise<void> {
  const rooms = Number(values.rooms);
  const seed = Number(values.seed);
  const kinds = values.preset.split(',').filter(isPreset);
  const asked = values.ask.split(',');
  const bassRooms = asked.length === 1 ? rooms : Math.ceil((rooms * bassOf500) / 500);
  const takes = values.takes === 'whole' ? 'take' : 'brief take';
  if (!(rooms >= 1) || !Number.isFinite(seed) || kinds.length === 0) {
    throw new RangeError(
      `--rooms N --preset ${presets.join(',')} --seed N --layout 5.1.4 --takes brief|whole --ask take,sub-level,roll-off,decay,distortion,bass`,
    );
  }
  if (seed < firstTuningSeed && seed + rooms + seedsOfAKind * presets.length > firstTuningSeed) {
    throw new RangeError(`--seed ${seed} with ${rooms} rooms would reach the tuning rooms`);
  }
  // Each kind has rooms of its own, which share nothing with another's.
  const orders = kinds.flatMap((preset) =>
    Array.from({ length: rooms }, (_, i): Order[] => {
      const order = {
        layout: values.layout,
        preset,
        seed: seed + i + seedsOfAKind * presets.indexOf(preset),
      };
      return [
        ...(asked.includes('take') ? [{ ...order, what: takes } as const] : []),
        ...(asked.includes('sub-level') && i % subsEvery === 0
          ? [{ ...order, what: 'sub level' } as const]
          : []),
        ...(asked.includes('roll-off') ? [{ ...order, what: 'roll-off' } as const] : []),
        ...(['decay', 'distortion'] as const)
          .filter((what) => asked.includes(what) && i % dear === 0)
          .map((what) => ({ ...order, what })),
        ...(asked.includes('bass') && i < bassRooms ? [{ ...order, what: 'bass' } as const] : []),
      ];
    }).flat(),
  );
  const began = performance.now();
  const results = await shareOut(orders, (done) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${orders.length} parts `);
  });
  const bass = results.flatMap((one) => (one.what === 'bass' ? [one.figures] : []));
  const tables = [
    ...kinds.flatMap((preset) => tablesOf(preset, results)),
    ...(bass.length > 0 ? bassTables(kinds.join(', '), bass) : []),
  ];
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
  const subLevels = results.flatMap((one) =>
    one.what === 'sub level' && one.preset === preset ? [one.figures] : [],
  );
  const cases = results.flatMap((one) =>
    one.what === 'roll-off' && one.preset === preset ? one.cases : [],
  );
  const decays = results.flatMap((one) =>
    one.what === 'decay' && one.preset === preset ? [one.cases] : [],
  );
  const distortions = results.flatMap((one) =>
    one.what === 'distortion' && one.preset === preset ? [one.figures] : [],
  );
  return [
    ...(takes.length > 0 ? roomTables(preset, takes) : []),
    ...(subLevels.length > 0 ? [subLevelTable(preset, subLevels)] : []),
    ...rolloffTables(preset, cases),
    ...(decays.length > 0 ? decayTables(preset, decays) : []),
    ...(distortions.length > 0 ? distortionTables(preset, distortions) : []),
  ];
}

await main();
