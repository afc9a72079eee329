import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { Schedule } from '../take/schedule';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { readWav } from '../wav/read-wav';
import type { WavFile } from '../wav/wav-file';
import type { Capture } from './port';

export interface CaptureOptions {
  /** ISO 8601 time of the recording's first sample, as well as it is known. */
  readonly startedAt: string;
  /**
   * Which channel of the recording is the microphone, counted from 1; or the only one that carries
   * sound (a mono microphone on a stereo recorder sits on one side, or on both alike).
   */
  readonly channel?: number | 'the live one';
}

const rates = [44100, 48000, 88200, 96000, 176400, 192000];
/** A channel whose peak is below this, dB re full scale, carries no sound. */
const silentDb = -90;

/**
 * The capture in a recording of the take. A Trouble when the WAV cannot be read, its rate is none
 * that a recorder uses or under 44.1 kHz, it has several channels and none was chosen, it is
 * silent, or it is shorter than the take.
 */
export function captureFromWav(
  bytes: Uint8Array,
  schedule: Schedule,
  options: CaptureOptions,
): Capture | Trouble {
  const wav = readWav(bytes);
  if (isTrouble(wav)) return wav;
  if (!rates.includes(wav.sampleRate)) return wrongRate(wav.sampleRate);
  const channel = options.channel === 'the live one' ? liveChannel(wav) : options.channel;
  const samples = chooseChannel(wav, channel);
  if (isTrouble(samples)) return samples;
  if (peakDb(samples) === -Infinity) {
    const what =
      wav.channels.length > 1
        ? msg(str`Channel ${channel} of the recording`)
        : msg('The recording');
    const seconds = inSeconds(wav.frames / wav.sampleRate);
    const sentence = msg(str`${what} is silent: every sample of its ${seconds} is zero.`);
    return trouble('silence', msg(str`${sentence} Check the microphone's input and record again.`));
  }
  const short = refuseShort(wav, schedule);
  if (short) return short;
  return {
    samples,
    sampleRate: wav.sampleRate,
    startedAt: options.startedAt,
    rig: 'recording',
    simulated: false,
    loopback: null,
    gaps: [],
    notes: [noteOf(wav, channel)],
  };
}

function wrongRate(rate: number): Trouble {
  const why =
    rate < 44100
      ? msg('below 44100 Hz the treble is lost that marks and arrivals are read from')
      : msg('no recorder uses it, so the header is damaged or wrong');
  const advice = msg('Record at the rate of the take, without converting.');
  return trouble('wrong-rate', msg(str`The recording's rate is ${rate} Hz: ${why}. ${advice}`));
}

/** The one channel that carries sound, counted from 1; the first of channels that are all alike. */
function liveChannel({ channels }: WavFile): number | undefined {
  const live = [...channels.keys()].filter((index) => peakDb(channels[index] ?? empty) >= silentDb);
  const first = live[0];
  const alike = live.every((index) =>
    channels[index]?.every((value, n) => value === channels[first ?? 0]?.[n]),
  );
  return first === undefined || !alike ? undefined : first + 1;
}

const empty = new Float32Array(0);

function chooseChannel(wav: WavFile, chosen: number | undefined): Float32Array | Trouble {
  const count = wav.channels.length;
  if (chosen !== undefined) {
    const samples = wav.channels[chosen - 1];
    if (samples) return samples;
    const has = count === 1 ? msg('one channel') : msg(str`${count} channels`);
    const advice =
      count === 1 ? msg('Choose channel 1.') : msg(str`Choose one from 1 to ${count}.`);
    return trouble(
      'wrong-channels',
      msg(str`The recording has ${has} and no channel ${chosen}. ${advice}`),
    );
  }
  const only = wav.channels[0];
  if (only && count === 1) return only;
  const live = wav.channels.flatMap((samples, index) => {
    const peak = peakDb(samples);
    return peak < silentDb
      ? []
      : [msg(str`${index + 1} (peak ${withUnit(numberText(peak, 1), 'dB')})`)];
  });
  const carry =
    live.length === 0
      ? msg('none of them carries sound')
      : live.length === 1
        ? msg(str`only channel ${live[0]} carries sound`)
        : msg(str`channels ${live.join(', ')} carry sound`);
  const sentence = msg(
    str`The recording has ${count} channels and the microphone is one of them: ${carry}.`,
  );
  return trouble('wrong-channels', msg(str`${sentence} Choose the microphone's channel.`));
}

/** From the first mark to the end of the last, less what clocks may differ, must be there. */
function refuseShort(wav: WavFile, schedule: Schedule): Trouble | null {
  const { markStarts, mark, sampleRate, lengthSamples } = schedule;
  const needed =
    ((markStarts.at(-1) ?? 0) + mark.lengthSamples - (markStarts[0] ?? 0)) / sampleRate;
  const seconds = wav.frames / wav.sampleRate;
  if (seconds >= 0.999 * needed) return null;
  const whole = inSeconds(lengthSamples / sampleRate);
  const sentence = msg(
    str`The recording lasts ${inSeconds(seconds)} and the take ${whole}: its end is missing.`,
  );
  const advice = msg('Record from before the take begins until after it has ended.');
  return trouble('too-short', `${sentence} ${advice}`);
}

function noteOf(wav: WavFile, chosen: number | undefined): string {
  const depth =
    wav.coding === 'float' ? msg(str`${wav.bits}-bit float`) : msg(str`${wav.bits}-bit`);
  const count = wav.channels.length;
  const channel = count === 1 ? '' : msg(str`, channel ${chosen ?? 1} of ${count}`);
  return msg(str`Recording: ${wav.sampleRate} Hz, ${depth}${channel}`);
}

function peakDb(samples: Float32Array): number {
  let peak = 0;
  for (const sample of samples) peak = Math.max(peak, Math.abs(sample));
  return 20 * Math.log10(peak);
}

function inSeconds(seconds: number): string {
  return withUnit(numberText(seconds, 1), 's');
}
