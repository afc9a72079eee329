import { realSignal, realSpectrum } from '../../../dsp/fft/fft';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { butterworthLow, sectionsAt } from '../../../dsp/room/section';
import { readTake } from '../../../src/reading/read-take';
import type { Readings } from '../../../src/reading/reading';
import { recordMix, renderMix } from '../../../src/rig/practice-capture';
import { convolver } from '../../../src/rig/practice-convolver';
import type { PracticeSystem } from '../../../src/rig/practice-system';
import type { ChannelLabel } from '../../../src/system/channel';
import type { SettingsInForce } from '../../../src/system/declared-settings';
import { scheduleEvents } from '../../../src/take/render';
import type { Schedule } from '../../../src/take/schedule';
import { isTrouble } from '../../../src/trouble';

/** What a processor does before the speakers of a simulated room. */
export interface Processor {
  readonly delaySeconds?: Readonly<Partial<Record<ChannelLabel, number>>>;
  readonly trimDb?: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** Butterworth high-pass of second order, Hz. */
  readonly highPassHz?: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** Plays what the high-passes take through a Linkwitz-Riley low-pass of fourth order on this sub. */
  readonly bassTo?: ChannelLabel;
}

/** What the microphone records of a take that goes through such a processor. */
export async function hearProcessed(
  system: PracticeSystem,
  schedule: Schedule,
  processor: Processor,
): Promise<Float32Array> {
  const { delaySeconds = {}, trimDb = {}, highPassHz = {}, bassTo } = processor;
  const speakers = system.speakers.map((entry) => {
    const { channel, speaker } = entry;
    const own = {
      ...speaker,
      delaySeconds: speaker.delaySeconds + (delaySeconds[channel] ?? 0),
      gainDb: speaker.gainDb + (trimDb[channel] ?? 0),
      protectionHz: highPassHz[channel] ?? speaker.protectionHz,
    };
    return { ...entry, speaker: own };
  });
  const processed = { ...system, speakers };
  const mix = await renderMix(processed, schedule);
  if (!mix) throw new RangeError('the rendering must run to its end');
  const sub = speakers.find(({ channel }) => channel === bassTo);
  if (sub) {
    const { room, microphone } = system;
    const plain = impulseResponseAt(room, sub.speaker, microphone, schedule.sampleRate);
    for (const { channel } of speakers) {
      const hz = highPassHz[channel];
      if (hz === undefined) continue;
      const bass = convolver(lowPassed(plain, hz, schedule.sampleRate));
      for (const { startSample, samples } of scheduleEvents(schedule, channel)) {
        bass.add(mix, startSample, samples);
      }
    }
  }
  const heard = await recordMix(mix, processed, schedule);
  if (!heard) throw new RangeError('the recording must run to its end');
  return heard;
}

/** A response behind a Linkwitz-Riley low-pass of fourth order, by the generator's own sections. */
function lowPassed(response: Float64Array, hz: number, sampleRate: number): Float64Array {
  const size = 2 ** Math.ceil(Math.log2(2 * response.length));
  const spectrum = realSpectrum(response, size);
  const sections = [butterworthLow(hz, 2), butterworthLow(hz, 2)];
  for (let k = 0; k <= size / 2; k++) {
    const [re, im] = sectionsAt(sections, (k * sampleRate) / size);
    const [x, y] = [spectrum[2 * k] ?? 0, spectrum[2 * k + 1] ?? 0];
    spectrum[2 * k] = re * x - im * y;
    spectrum[2 * k + 1] = re * y + im * x;
  }
  return realSignal(spectrum, size).slice(0, response.length);
}

/** Readings of such a take; fails when it cannot be read. */
export async function readProcessed(
  schedule: Schedule,
  samples: Float32Array,
  inForce: SettingsInForce | null,
): Promise<Readings> {
  const readings = await readTake(
    schedule,
    { samples, sampleRate: 48000 },
    { temperatureCelsius: 20, referenceDistanceMetres: 2.4, simulated: true, inForce },
  );
  if (isTrouble(readings)) throw new RangeError(readings.sentence);
  return readings;
}
