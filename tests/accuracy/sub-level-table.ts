import { coverageRows } from './coverage-rows';
import type { SubLevelFigures } from './figures';
import { levelsAtDb, readAtDb } from './measure-room';
import { atLeast, shown, type Table } from './table';

const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;

/** The table of subs' levels beside FL's in rooms of one kind. */
export function subLevelTable(preset: string, rooms: readonly SubLevelFigures[]): Table {
  const all = rooms.flatMap(({ subLevels }) => subLevels);
  const inNoise = rooms.flatMap(({ subLevelsInNoise }) => subLevelsInNoise);
  const told = all.filter((one) => one !== null).length;
  const toldInNoise = inNoise.filter((one) => one !== null).length;
  return {
    title: `In-room level of subs 30 to 80 Hz beside FL’s, ${rooms.length} ${preset} rooms`,
    rows: [
      atLeast(
        `${readAtDb} dB over noise: told, of ${all.length}`,
        told / all.length,
        1,
        '',
        percent,
      ),
      ...coverageRows(`${readAtDb} dB over noise`, all),
      shown(
        `${levelsAtDb} dB over noise: told, of ${inNoise.length}`,
        percent(toldInNoise / inNoise.length),
      ),
      ...coverageRows(`${levelsAtDb} dB over noise`, inNoise),
    ],
  };
}
