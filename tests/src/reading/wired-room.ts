import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { readTake, type ReadTakeOptions } from '../../../src/reading/read-take';
import type { ChannelReading, Readings } from '../../../src/reading/reading';
import type { ChannelLabel, Layout } from '../../../src/system/channel';
import { layoutFromName } from '../../../src/system/layout';
import { scheduleEvents } from '../../../src/take/render';
import type { Schedule } from '../../../src/take/schedule';
import { isTrouble } from '../../../src/trouble';

/** A speaker that is a wire with one echo. */
export interface Wire {
  readonly delaySamples: number;
  readonly gain: number;
  readonly echo?: { readonly delaySamples: number; readonly gain: number };
}

export type Wires = Readonly<Partial<Record<ChannelLabel, Wire>>>;

export const plainWire: Wire = { delaySamples: 336, gain: 0.5 };

export function layoutNamed(name: string): Layout {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  return layout;
}

/** What a microphone hears of a take whose speakers are wires, in white noise of a known rms. */
export function hearWires(
  schedule: Schedule,
  wires: Wires,
  noise: { readonly rms: number; readonly seed: number } = { rms: 2e-5, seed: 1 },
): Float32Array {
  const normal = gaussian(seededRandom(noise.seed));
  const heard = Float64Array.from({ length: schedule.lengthSamples + 2400 }, () => {
    return noise.rms * normal();
  });
  for (const { channel, startSample, samples } of scheduleEvents(schedule)) {
    const { delaySamples, gain, echo } = wires[channel] ?? plainWire;
    const paths = [{ delaySamples, gain }, ...(echo ? [echo] : [])];
    for (const path of paths) {
      const from = startSample + path.delaySamples;
      for (let n = 0; n < samples.length; n++) {
        heard[from + n] = (heard[from + n] ?? 0) + path.gain * (samples[n] ?? 0);
      }
    }
  }
  return Float32Array.from(heard);
}

/** Readings of such a take; fails when it cannot be read. */
export async function readWires(
  schedule: Schedule,
  samples: Float32Array,
  more: Partial<ReadTakeOptions> & { readonly loopback?: Float32Array } = {},
): Promise<Readings> {
  const { loopback = null, ...options } = more;
  const readings = await readTake(
    schedule,
    { samples, sampleRate: schedule.sampleRate, loopback },
    { temperatureCelsius: 20, referenceDistanceMetres: 2.4, simulated: true, ...options },
  );
  if (isTrouble(readings)) throw new RangeError(readings.sentence);
  return readings;
}

export function readingOf({ channels }: Readings, label: ChannelLabel): ChannelReading {
  const reading = channels.find(({ channel }) => channel === label);
  if (!reading) throw new RangeError(`${label} was not read`);
  return reading;
}
