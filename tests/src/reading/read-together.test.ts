import { describe, expect, it } from 'vitest';
import { markBand } from '../../../dsp/timing/mark-band';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { readBetween } from '../../../dsp/timing/resample';
import { readOne, type FramedTake, type UnframedTake } from '../../../src/reading/read-one';
import { readTake } from '../../../src/reading/read-take';
import type { ReadingHelper } from '../../../src/reading/read-together';
import type { Readings } from '../../../src/reading/reading';
import { layoutFromName } from '../../../src/system/layout';
import { renderChannel } from '../../../src/take/render';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';

const layout = layoutFromName('3.1');
if (isTrouble(layout)) throw new RangeError(layout.sentence);
const schedule = scheduleTake(layout, { sweepSeconds: 1 });

/** Wires on a clock of their own, in some noise; 700 frames are missing inside FC's sweep. */
function record(): Float32Array {
  const normal = gaussian(seededRandom(3));
  const sum = Float64Array.from({ length: schedule.lengthSamples }, () => 1e-4 * normal());
  for (const channel of schedule.channels) {
    for (const [n, value] of renderChannel(schedule, channel).entries()) {
      sum[n] = (sum[n] ?? 0) + value;
    }
  }
  const skewed = readBetween(sum, -4000.3, 1 - 60e-6, sum.length + 8000);
  const cut = schedule.segments.find(({ channel }) => channel === 'FC');
  const at = 4000 + (cut?.sweepStart ?? 0) + 30_000;
  return Float32Array.from([...skewed.subarray(0, at), ...skewed.subarray(at + 700)]);
}

const capture = { samples: record(), sampleRate: 48_000 };

async function readWith(
  helpers: readonly ReadingHelper[],
): Promise<{ readings: Readings; told: string[] }> {
  const told: string[] = [];
  const readings = await readTake(schedule, capture, {
    temperatureCelsius: 20,
    referenceDistanceMetres: 2.4,
    simulated: true,
    helpers,
    onChannel: ({ channel }, progress) => told.push(`${channel} ${progress.toFixed(2)}`),
  });
  if (isTrouble(readings)) throw new RangeError(readings.sentence);
  return { readings, told };
}

/** Works on copies, as a worker does. */
function copyingHelper(read: string[]): ReadingHelper {
  let begun: UnframedTake | null = null;
  let take: FramedTake | null = null;
  return {
    begin: (given) => (begun = structuredClone(given)),
    band: ({ samples, sampleRate, mark }) =>
      Promise.resolve(structuredClone(markBand(samples, sampleRate, mark))),
    setFrame: (frame) => (take = begun && { ...begun, frame: structuredClone(frame) }),
    async read(label, piece) {
      await Promise.resolve();
      const channel = take?.channels.find((one) => one.label === label);
      if (!take || !channel) throw new RangeError(`no take with ${label}`);
      read.push(label);
      return readOne(take, channel, structuredClone(piece));
    },
  };
}

describe('readings made together', () => {
  it('are those one thread makes, in the order of the schedule', async () => {
    const alone = await readWith([]);
    const read: string[] = [];
    const together = await readWith([copyingHelper(read)]);
    expect(read.length).toBeGreaterThan(0);
    expect(read).not.toContain(schedule.reference);
    expect(alone.readings.channels.map(({ channel }) => channel)).toEqual(schedule.channels);
    expectClose(together.readings, alone.readings, 1e-5);
    expect(together.told).toHaveLength(4);
    expect(together.told.at(-1)).toContain('1.00');
    const faults = together.readings.channels.find(({ channel }) => channel === 'FC')?.faults;
    expect(faults?.map(({ kind }) => kind)).toContain('lost');
  });

  it('lack nothing when a helper fails', async () => {
    const failing: ReadingHelper = {
      begin: () => undefined,
      setFrame: () => undefined,
      band: () => Promise.reject(new Error('gone')),
      read: () => Promise.reject(new Error('gone')),
    };
    const { readings } = await readWith([failing]);
    expect(readings.channels.map(({ channel }) => channel)).toEqual(schedule.channels);
  });
});
