import { takeFiles, takeWavSpec } from '../rig/recording-stimulus';
import type { Layout } from '../system/channel';
import { layoutFromName } from '../system/layout';
import { firstProvingAttempt, planTake } from '../take/plan-take';
import { defaultSweepSeconds } from '../take/schedule-take';
import type { Schedule } from '../take/schedule';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { bytesPerSample, type WavDepth } from '../wav/wav-file';
import { given, type Command, type CommandIo, type GivenOptions } from './command';
import { numberOption } from './number-option';
import { writeFiles } from './write-files';

const rates = ['44100', '48000', '88200', '96000', '176400', '192000'];
const depths = new Map<string, WavDepth>([
  ['16', 16],
  ['24', 24],
  ['32', 32],
  ['float', 'float'],
]);
/** Most bytes that the length fields of a WAV can count, header included. */
const largestWav = 2 ** 32 - 1;

/** Saves a take for something else to play. */
export const stimulusCommand: Command = {
  name: 'stimulus',
  summary: 'Saves a take: take.wav, one channel a speaker, and take.json, its schedule.',
  options: [
    { name: 'layout', value: 'NAME', about: 'bed.subs.heights, such as 5.2.4', required: true },
    { name: 'out', value: 'DIR', about: 'where to; made when missing', required: true },
    { name: 'rate', value: 'HZ', about: rates.join(', '), fallback: '48000' },
    { name: 'depth', value: 'BITS', about: '16 (dithered), 24, 32 or float', fallback: '24' },
    {
      name: 'sweep-seconds',
      value: 'S',
      about: 'length of each sweep, 0.5 to 30 (default 2.73)',
    },
    { name: 'peak', value: 'DB', about: 'peak of sweeps and marks, -60 to 0 dB', fallback: '-12' },
    { name: 'averages', value: 'N', about: 'sweeps of each speaker, 1 to 8', fallback: '1' },
    { name: 'pause', value: 'S', about: 'silence after each speaker, 0 to 10 s', fallback: '0' },
    {
      name: 'overlap',
      value: 'S',
      about: "let sweeps overlap where the room's sound has died away within S, 0.1 to 10",
    },
    {
      name: 'prove',
      about: 'a take that goes through the processor as it will play, its subs by LFE',
    },
  ],
  notes: [
    'Play take.wav through the system with crossovers at full range, record the microphone from\nbefore it begins until after it has ended, and give the recording and take.json to "read".',
    'take.json is of version 2: a speaker has as many segments as averages, segments that overlap\nshare a mark, and replayGainDb says how much louder than the file a speaker is replayed.',
    'Files of an earlier take in DIR are replaced once the new ones are complete. Start quiet:\nsweeps are loud.',
  ],
  run: saveStimulus,
};

async function saveStimulus(options: GivenOptions, io: CommandIo): Promise<object | Trouble> {
  const layout = layoutFromName(given(options, 'layout'));
  if (isTrouble(layout)) return layout;
  const rate = given(options, 'rate');
  if (!rates.includes(rate)) {
    return trouble('bad-number', `--rate must be one of ${rates.join(', ')} Hz, not "${rate}".`);
  }
  const depth = depths.get(given(options, 'depth'));
  if (depth === undefined) {
    const said = given(options, 'depth');
    return trouble('bad-number', `--depth must be 16, 24, 32 or float, not "${said}".`);
  }
  const sweepSeconds = options.has('sweep-seconds')
    ? numberOption(options, 'sweep-seconds', { low: 0.5, high: 30, unit: 's' })
    : undefined;
  if (isTrouble(sweepSeconds)) return sweepSeconds;
  const peakDb = numberOption(options, 'peak', { low: -60, high: 0, unit: 'dB' });
  if (isTrouble(peakDb)) return peakDb;

  const schedule = scheduleFor(options, layout, { rate: Number(rate), sweepSeconds, peakDb });
  if (isTrouble(schedule)) return schedule;
  const spec = takeWavSpec(schedule, depth);
  const bytes = 80 + spec.frames * spec.channelCount * bytesPerSample(depth);
  if (bytes > largestWav) {
    const size = (bytes / 2 ** 30).toFixed(1);
    const sentence = `This take would fill ${size} GiB, and a WAV holds 4.`;
    return trouble('bad-number', `${sentence} Choose a lower rate or depth, or shorter sweeps.`);
  }
  const paths = await writeFiles(given(options, 'out'), takeFiles(schedule, depth), io);
  if (isTrouble(paths)) return paths;
  const [wav, take] = paths;
  const seconds = schedule.lengthSamples / schedule.sampleRate;
  io.tell(
    `Saved ${wav} (${schedule.channels.length} channels, ${seconds.toFixed(1)} s) and ${take}.`,
  );
  return {
    format: 'leadline-stimulus',
    version: 1,
    layout: schedule.layout,
    takeId: schedule.id,
    channels: schedule.channels,
    sampleRate: schedule.sampleRate,
    depth,
    channelMask: spec.channelMask,
    seconds,
    wav,
    take,
  };
}

/** The take these options ask for, every speaker on a channel of its own. */
function scheduleFor(
  options: GivenOptions,
  layout: Layout,
  take: { rate: number; sweepSeconds: number | undefined; peakDb: number },
): Schedule | Trouble {
  const averages = numberOption(options, 'averages', { low: 1, high: 8, whole: true });
  if (isTrouble(averages)) return averages;
  const pauseSeconds = numberOption(options, 'pause', { low: 0, high: 10, unit: 's' });
  if (isTrouble(pauseSeconds)) return pauseSeconds;
  const overlap = options.has('overlap');
  const decaySeconds = overlap
    ? numberOption(options, 'overlap', { low: 0.1, high: 10, unit: 's' })
    : null;
  if (isTrouble(decaySeconds)) return decaySeconds;
  const { rate: sampleRate, sweepSeconds = defaultSweepSeconds, peakDb } = take;
  const settings = { sweepSeconds, averages, pauseSeconds, overlap, repeats: 0 };
  const proving = { attempt: firstProvingAttempt, throughLfe: true };
  const plan = planTake(layout, settings, null, {
    sampleRate,
    peakDb,
    decaySeconds,
    ...(options.has('prove') ? proving : {}),
  });
  if (isTrouble(plan)) return plan;
  const [part] = plan.parts;
  if (!part) throw new RangeError(`layout ${layout.name} has no speakers`);
  return part.schedule;
}
