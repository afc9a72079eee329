import { seededRandom } from '../../dsp/signal/random';
import { synchronisedSweep } from '../../dsp/signal/sweep';
import type { Channel, ChannelLabel } from '../system/channel';
import type { Schedule, ScheduledSegment, ScheduledSweep } from './schedule';
import { hashText, scheduleId } from './schedule-id';

/** One unbroken take in full. */
export interface TakeLayout {
  readonly layoutName: string;
  /** In the order they are swept and of the WAV's channels. */
  readonly channels: readonly Channel[];
  readonly reference: ChannelLabel;
  readonly sampleRate: number;
  readonly sweepSeconds: number;
  readonly peakDb: number;
  readonly averages: number;
  readonly pauseSeconds: number;
  /** From one sweep's start to the next inside a bundle; null keeps sweeps apart. */
  readonly spacingSeconds: number | null;
  /** Other numbers space the marks otherwise. */
  readonly attempt: number;
  readonly replayGainDb: (channel: ChannelLabel) => number;
}

/** Seconds of everything but the sweeps. */
const silenceSeconds = 4;
const wakeSeconds = 2;
const settleSeconds = 0.5;
const markSeconds = 0.03;
const guardSeconds = 0.3;
export const tailSeconds = 1;
const endSeconds = 1;
/** Tails differ by whole milliseconds below this, so that no two takes space their marks alike. */
const fingerprintMilliseconds = 64;
/** Sweeps that one mark opens at most: audio lost among them spoils them all. */
const mostInBundle = 4;

const sweepHz = { main: [10, 20000], sub: [10, 500] } as const;

/**
 * Lays out silence, wake-up noise, then bundles of mark, guard, sweeps and tail, a last mark,
 * silence. Without spacing every bundle is one sweep. Averaged sweeps go round all speakers before
 * the second begins, so that one disturbance does not hit them all. Form of the take: common
 * practice; overlap: Majdak, Balazs and Laback, JAES 55 (2007), multiple exponential sweep method.
 */
export function layOutTake(take: TakeLayout): Schedule {
  const { sampleRate, sweepSeconds, peakDb } = take;
  const samples = (seconds: number): number => Math.round(seconds * sampleRate);
  const fingerprint = seededRandom(hashText(fingerprintText(take)));
  const markLength = samples(markSeconds);
  const wakeStart = samples(silenceSeconds);
  const spacing = samples(take.spacingSeconds ?? 0);

  let at = wakeStart + samples(wakeSeconds) + samples(settleSeconds);
  const segments: ScheduledSegment[] = [];
  const markStarts: number[] = [];
  for (const bundle of bundlesOf(take)) {
    markStarts.push(at);
    const extra = Math.floor(fingerprint() * fingerprintMilliseconds) / 1000;
    let end = at;
    for (const [index, channel] of bundle.entries()) {
      const sweepStart = at + markLength + samples(guardSeconds) + index * spacing;
      const sweep = sweepFor(channel, samples(sweepSeconds), sampleRate);
      end = sweepStart + sweep.lengthSamples + samples(tailSeconds + extra);
      const replayGainDb = take.replayGainDb(channel.label);
      segments.push({
        channel: channel.label,
        markStart: at,
        sweepStart,
        sweep,
        end,
        replayGainDb,
      });
    }
    at = end + samples(take.pauseSeconds);
  }
  const schedule = {
    format: 'leadline-take',
    version: 2,
    layout: take.layoutName,
    sampleRate,
    lengthSamples: at + markLength + samples(endSeconds),
    channels: take.channels.map((channel) => channel.label),
    reference: take.reference,
    silence: { start: 0, length: wakeStart },
    wake: { start: wakeStart, length: samples(wakeSeconds), levelDb: -42 },
    mark: {
      startHz: 2000,
      endHz: 12000,
      lengthSamples: markLength,
      fadeSamples: Math.round(markLength / 10),
    },
    markStarts: [...markStarts, at],
    peakDb,
    segments,
  } as const;
  return { ...schedule, id: scheduleId(schedule) };
}

/** Speakers that share a mark: those of one kind of sweep, in order, round after round. */
function bundlesOf({ channels, averages, spacingSeconds }: TakeLayout): Channel[][] {
  const most = spacingSeconds === null ? 1 : mostInBundle;
  const round: Channel[][] = [];
  for (const subs of [false, true]) {
    const kind = channels.filter((channel) => (channel.kind === 'sub') === subs);
    for (let at = 0; at < kind.length; at += most) round.push(kind.slice(at, at + most));
  }
  // Alone, each keeps its place in the order of the take.
  const inOrder = most === 1 ? channels.map((channel) => [channel]) : round;
  return Array.from({ length: averages }, () => inOrder).flat();
}

function sweepFor(channel: Channel, lengthSamples: number, sampleRate: number): ScheduledSweep {
  const [low, high] = sweepHz[channel.kind === 'sub' ? 'sub' : 'main'];
  const spec = synchronisedSweep(low, high, lengthSamples, sampleRate);
  const { startHz, endHz, fadeInSamples, fadeOutSamples } = spec;
  return { startHz, endHz, lengthSamples, fadeInSamples, fadeOutSamples };
}

/** Highest harmonic that must not reach back into the response of the sweep before. */
const highestHarmonic = 5;

/**
 * The closest that sweeps of mains may follow each other, seconds: the decay of the response
 * before, and the lead of the next one's harmonics, L ln 5 (Majdak 2007). Null when sweeps one
 * after another are as quick.
 */
export function closestSpacing(sweepSeconds: number, decaySeconds: number): number | null {
  const [low, high] = sweepHz.main;
  const lead = (sweepSeconds / Math.log(high / low)) * Math.log(highestHarmonic);
  const spacing = decaySeconds + lead;
  const apart = sweepSeconds + tailSeconds + markSeconds + guardSeconds;
  return spacing < 0.9 * apart ? spacing : null;
}

/** Plain takes keep the text they always had. */
function fingerprintText(take: TakeLayout): string {
  const { layoutName, sampleRate, sweepSeconds, peakDb, averages, pauseSeconds, attempt } = take;
  const plain = `${layoutName} ${sampleRate} ${sweepSeconds} ${peakDb}`;
  const labels = take.channels.map(({ label }) => label).join(' ');
  const more = [averages, pauseSeconds, take.spacingSeconds ?? '', attempt, labels].join(' ');
  return `${plain} ${more}`;
}
