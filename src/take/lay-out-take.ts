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
  /** How long a response must be given before the next sweep of a bundle; null keeps sweeps apart. */
  readonly decaySeconds: number | null;
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
const tailSeconds = 1;
const endSeconds = 1;
/** Tails differ by whole milliseconds below this, so that no two takes space their marks alike. */
const fingerprintMilliseconds = 64;
/** Sweeps that one mark opens at most: audio lost among them spoils them all. */
const mostInBundle = 4;

const sweepHz = { main: [10, 20000], sub: [10, 500] } as const;

/**
 * Lays out silence, wake-up noise, then bundles of mark, guard, sweeps and tail, a last mark,
 * silence. Without a known decay every bundle is one sweep. Averaged sweeps go round all speakers before
 * the second begins, so that one disturbance does not hit them all. Form of the take: common
 * practice; overlap: Majdak, Balazs and Laback, JAES 55 (2007), multiple exponential sweep method.
 */
export function layOutTake(take: TakeLayout): Schedule {
  const { sampleRate, peakDb } = take;
  const samples = (seconds: number): number => Math.round(seconds * sampleRate);
  const fingerprint = seededRandom(hashText(fingerprintText(take)));
  const markLength = samples(markSeconds);
  const wakeStart = samples(silenceSeconds);

  let at = wakeStart + samples(wakeSeconds) + samples(settleSeconds);
  const segments: ScheduledSegment[] = [];
  const markStarts: number[] = [];
  for (const bundle of bundlesOf(take)) {
    markStarts.push(at);
    const extra = Math.floor(fingerprint() * fingerprintMilliseconds) / 1000;
    const spacing = samples(closestSpacing(take, bundle[0]?.kind === 'sub' ? 'sub' : 'main') ?? 0);
    let end = at;
    for (const [index, channel] of bundle.entries()) {
      const sweepStart = at + markLength + samples(guardSeconds) + index * spacing;
      const sweep = sweepFor(take, channel.kind === 'sub' ? 'sub' : 'main');
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
function bundlesOf(take: TakeLayout): Channel[][] {
  const { channels, averages } = take;
  const round: Channel[][] = [];
  for (const kind of ['main', 'sub'] as const) {
    const most = closestSpacing(take, kind) === null ? 1 : mostInBundle;
    const alike = channels.filter((channel) => (channel.kind === 'sub') === (kind === 'sub'));
    for (let at = 0; at < alike.length; at += most) round.push(alike.slice(at, at + most));
  }
  // Alone, each keeps its place in the order of the take.
  const alone = round.every((bundle) => bundle.length === 1);
  const inOrder = alone ? channels.map((channel) => [channel]) : round;
  return Array.from({ length: averages }, () => inOrder).flat();
}

type SweepKind = keyof typeof sweepHz;

function sweepFor({ sweepSeconds, sampleRate }: TakeLayout, kind: SweepKind): ScheduledSweep {
  const [low, high] = sweepHz[kind];
  const length = Math.round(sweepSeconds * sampleRate);
  const spec = synchronisedSweep(low, high, length, sampleRate);
  const { startHz, endHz, lengthSamples, fadeInSamples, fadeOutSamples } = spec;
  return { startHz, endHz, lengthSamples, fadeInSamples, fadeOutSamples };
}

/** Highest harmonic that must not reach back into the response of the sweep before. */
const highestHarmonic = 5;

/**
 * The closest that sweeps of a kind may follow each other, seconds: the decay of the response
 * before, and the lead of the next one's harmonics, L ln 5 (Majdak 2007). A sub's sweep rises
 * slower, so its harmonics lead by more. Null when sweeps one after another are as quick, or when
 * the decay is not known.
 */
function closestSpacing(take: TakeLayout, kind: SweepKind): number | null {
  const { decaySeconds, sampleRate } = take;
  if (decaySeconds === null) return null;
  const { startHz, endHz, lengthSamples } = sweepFor(take, kind);
  const seconds = lengthSamples / sampleRate;
  const spacing = decaySeconds + (seconds / Math.log(endHz / startHz)) * Math.log(highestHarmonic);
  const apart = seconds + tailSeconds + markSeconds + guardSeconds;
  return spacing < 0.9 * apart ? spacing : null;
}

/** Plain takes keep the text they always had. */
function fingerprintText(take: TakeLayout): string {
  const { layoutName, sampleRate, sweepSeconds, peakDb, averages, pauseSeconds, attempt } = take;
  const plain = `${layoutName} ${sampleRate} ${sweepSeconds} ${peakDb}`;
  const labels = take.channels.map(({ label }) => label).join(' ');
  const more = [averages, pauseSeconds, take.decaySeconds ?? '', attempt, labels].join(' ');
  return `${plain} ${more}`;
}
