import { surroundRoom } from '../loop/rooms';
import { withLiveSession } from './live-session';
import { judgeReadings } from './judge-readings';

/** One row a take: how it ended and how far its numbers are off. */
export interface TakeRow {
  readonly take: number;
  readonly outcome: string;
  readonly wrong: readonly string[];
  readonly skewErrorPpm: number | null;
  readonly worstMillimetres: number | null;
  readonly worstLevelDb: number | null;
  readonly covered: readonly [number, number];
}

/** Runs so many takes of a 7.1 one after the other in one page; none is repeated or left out. */
export async function runTakes(count: number, skewPpm = surroundRoom.skewPpm): Promise<TakeRow[]> {
  const room = { ...surroundRoom, skewPpm };
  return withLiveSession(room, '7.1', async (session) => {
    const rows: TakeRow[] = [];
    for (let take = 1; take <= count; take++) {
      const before = (await session.state()).document.takes.length;
      await session.begin({ take: true });
      const { document, trouble } = await session.untilIdle();
      const readings = document.takes.length > before ? document.takes.at(-1)?.readings : null;
      const row = readings
        ? judged(take, readings, session.loop.truth, skewPpm)
        : unread(take, trouble?.sentence ?? 'nothing was read and nothing was said');
      rows.push(row);
      console.log(rowText(row));
    }
    if (session.complaints.length > 0) throw new Error(session.complaints.join('\n'));
    return rows;
  });
}

function judged(
  take: number,
  readings: Parameters<typeof judgeReadings>[0],
  truth: Parameters<typeof judgeReadings>[1],
  skewPpm: number,
): TakeRow {
  const { wrong, flagged, worstMillimetres, worstLevelDb, covered } = judgeReadings(
    readings,
    truth,
  );
  const lost = readings.clock.faults.map(
    ({ kind, samples, channel }) => `${kind} ${samples.toFixed(1)} in ${channel ?? 'no segment'}`,
  );
  const said = [...lost, ...flagged];
  return {
    take,
    outcome: said.length === 0 ? 'whole' : said.join(', '),
    wrong,
    skewErrorPpm: readings.clock.skewPpm - skewPpm,
    worstMillimetres,
    worstLevelDb,
    covered,
  };
}

function unread(take: number, sentence: string): TakeRow {
  return {
    take,
    outcome: sentence,
    wrong: [],
    skewErrorPpm: null,
    worstMillimetres: null,
    worstLevelDb: null,
    covered: [0, 0],
  };
}

/** A row as text. */
export function rowText(row: TakeRow): string {
  const number = (value: number | null, digits: number): string =>
    (value === null ? '–' : value.toFixed(digits)).padStart(8);
  return [
    String(row.take).padStart(3),
    number(row.skewErrorPpm, 3),
    number(row.worstMillimetres, 1),
    number(row.worstLevelDb, 3),
    `${row.covered[0]}/${row.covered[1]}`.padStart(6),
    row.wrong.length === 0 ? row.outcome : `WRONG: ${row.wrong.join(', ')} (${row.outcome})`,
  ].join('  ');
}
