import type { NoiseRequest, NoiseReading } from '../../src/noise/noise-state';
import type { ReadingCurves } from '../../src/reading/reading';
import type { ChannelLabel } from '../../src/system/channel';
import { surroundRoom } from '../loop/rooms';
import { outputOf, withLiveSession, type LiveSession } from './live-session';

/** How far pink noise and sweep are apart on one speaker, and its level from the truth. */
export interface AgreementRow {
  readonly channel: ChannelLabel;
  readonly worstDb: number;
  readonly worstHz: number;
  readonly levelErrorDb: number;
  readonly sweepLevelErrorDb: number;
}

/** The speaker's whole band in noise. */
export function fullBand(channel: ChannelLabel, averagingSeconds: number): NoiseRequest {
  return {
    kind: 'noise',
    channel,
    lowHz: 10,
    highHz: 20000,
    gainDb: 0,
    bandsPerOctave: 24,
    averagingSeconds,
  };
}

/** Four sweeps of each front speaker, then a minute of pink noise on each, from 30 Hz to 16 kHz. */
export async function comparePinkAndSweep(): Promise<AgreementRow[]> {
  return withLiveSession(surroundRoom, '3.0', async (session) => {
    await session.change({ take: { averages: 4 } });
    await session.begin({ take: true });
    const { readings } = await session.untilIdle();
    const rows: AgreementRow[] = [];
    for (const channel of ['FL', 'FR', 'FC'] as const) {
      const noise = await readNoise(session, fullBand(channel, 60));
      const sweep = readings?.channels.find((one) => one.channel === channel);
      const truth = session.loop.truth.find(({ output }) => output === outputOf[channel]);
      if (!noise?.response || !sweep?.curves || !truth) throw new Error(`${channel} was not read`);
      rows.push({
        channel,
        ...worstDifference(noise.response, sweep.curves.response),
        levelErrorDb: (noise.levelDb ?? Number.NaN) - truth.levelDb,
        sweepLevelErrorDb: (sweep.levelDb ?? Number.NaN) - truth.levelDb + 12,
      });
    }
    return rows;
  });
}

async function readNoise(
  session: LiveSession,
  request: NoiseRequest,
): Promise<NoiseReading | null> {
  await session.begin({ noise: request });
  const deadline = Date.now() + 150_000;
  while (Date.now() < deadline) {
    await new Promise((resolve) => setTimeout(resolve, 500));
    const { activity, trouble } = await session.state();
    if (activity.kind === 'noise' && activity.noise.complete) {
      await session.page.keyboard.press('Escape');
      await session.untilIdle();
      return activity.noise.reading;
    }
    if (activity.kind === 'idle' && trouble) throw new Error(trouble.sentence);
  }
  return null;
}

type Response =
  Pick<ReadingCurves['response'], 'hz' | 'db'> | NonNullable<NoiseReading['response']>;

/** Largest difference where both curves have a point between 30 Hz and 16 kHz. */
function worstDifference(one: Response, other: Response): { worstDb: number; worstHz: number } {
  let [worstDb, worstHz] = [0, 0];
  for (const [index, hz] of one.hz.entries()) {
    if (hz < 30 || hz > 16000) continue;
    const beside = other.hz.findIndex((each) => Math.abs(each / hz - 1) < 1e-6);
    if (beside < 0) throw new Error(`the curves have no common point at ${hz} Hz`);
    const difference = Math.abs((one.db[index] ?? 0) - (other.db[beside] ?? 0));
    if (difference > worstDb) [worstDb, worstHz] = [difference, hz];
  }
  return { worstDb, worstHz };
}
