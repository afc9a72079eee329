import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { readTake } from '../../../src/reading/read-take';
import type { Readings } from '../../../src/reading/reading';
import { layoutFromName } from '../../../src/system/layout';
import { renderChannel } from '../../../src/take/render';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';

/** Reads a take in which all speakers but the `dead` are wires, in noise 60 dB under the sweeps. */
async function readWithout(dead: string, seed: number, cutSeconds = 0): Promise<Readings> {
  const layout = layoutFromName('2.1');
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  const schedule = scheduleTake(layout, { sweepSeconds: 0.5 });
  const normal = gaussian(seededRandom(seed));
  const samples = Float32Array.from({ length: schedule.lengthSamples }, () => 2e-4 * normal());
  for (const channel of schedule.channels) {
    if (channel === dead) continue;
    for (const [n, value] of renderChannel(schedule, channel).entries()) {
      samples[n] = (samples[n] ?? 0) + value;
    }
  }
  const readings = await readTake(
    schedule,
    { samples: samples.subarray(cutSeconds * schedule.sampleRate), sampleRate: 48000 },
    { temperatureCelsius: 20, referenceDistanceMetres: 2.4, simulated: true },
  );
  if (isTrouble(readings)) throw new RangeError(readings.sentence);
  return readings;
}

describe('a speaker that does not play', () => {
  for (const dead of ['FR', 'Sub 1']) {
    it(`has no distance, level or polarity when ${dead} is dead, and is called silent`, async () => {
      for (const seed of [1, 2, 3, 4]) {
        const { channels } = await readWithout(dead, seed);
        expect(channels.find(({ channel }) => channel === dead)).toMatchObject({
          arrivalSeconds: null,
          distanceMetres: null,
          distanceInterval: null,
          levelDb: null,
          polarity: 'cannot tell',
          rolloff: null,
          faults: [{ kind: 'silent' }],
        });
        for (const { channel, distanceMetres, faults } of channels) {
          if (channel === dead) continue;
          expect(distanceMetres).not.toBeNull();
          expect(faults).toEqual([]);
        }
      }
    });
  }

  it('is called silent too when the capture does not hold the silence before the take', async () => {
    const { channels } = await readWithout('FR', 5, 4);
    const silent = channels.filter(({ faults }) => faults.some(({ kind }) => kind === 'silent'));
    expect(silent.map(({ channel }) => channel)).toEqual(['FR']);
  });
});
