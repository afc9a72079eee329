import { bandPower } from '../../dsp/level/band-level';
import { powerToDb } from '../../dsp/level/decibels';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { powerSpectrum, type PowerSpectrum } from '../../dsp/response/power-spectrum';
import type { Arrival } from '../../dsp/timing/arrival';
import { readPolarity } from '../../dsp/timing/polarity';
import type { Channel } from '../system/channel';
import { readArrival, type ArrivalFinding } from './read-arrival';
import { readEnvelope, readResponse } from './read-curves';
import { readDecay } from './read-decay';
import { readRolloff } from './read-rolloff';
import type { ChannelReading, Fault } from './reading';
import { untimed, type Timing } from './untimed';
import { withholdMended } from './withhold-mended';

/** One channel's impulse response, and what it is read against. */
export interface ChannelSource {
  readonly channel: Channel;
  readonly ir: ImpulseResponse;
  /** Silence through the same deconvolution; null when the capture holds none. */
  readonly noise: ImpulseResponse | null;
  readonly faults: readonly Fault[];
  /** Why nothing can be read of this segment; null when it can. */
  readonly spoilt: string | null;
  /** Where in the sweep lost or repeated audio was mended, Hz; null where nothing was. */
  readonly mendedHz: number | null;
}

export interface ReadingFrame {
  /** The reference speaker's arrival; null when it could not be told. */
  readonly reference: Arrival | null;
  readonly referenceDistanceMetres: number;
  readonly metresPerSecond: number;
}

/** Peak to noise under which a segment counts as silent, dB. */
const silentDb = 18;
/** Share of the time before zero delay in which no speaker can be heard yet. */
const earlyShare = 0.6;
const levelHz = { main: [500, 2000], sub: [30, 80] } as const;

/** Reads everything of one channel; numbers that cannot be told are null, with a sentence. */
export function readChannel(source: ChannelSource, frame: ReadingFrame): ChannelReading {
  const { channel, ir, noise } = source;
  const notes: string[] = [];
  if (source.spoilt !== null) return unread(channel, source.faults, [source.spoilt]);
  const found = readArrival(ir, channel);
  const margin = found.arrival?.peakToNoiseDb ?? null;
  const timed = found.arrival !== null && !found.arrival.bandAdapted;
  if (!timed && !carriesSound(ir, noise)) {
    const sentence = `${channel.name} stays silent: nothing above the noise in its segment. Check its amplifier, its plug and its standby, then repeat it.`;
    return unread(channel, [...source.faults, { kind: 'silent', sentence }], []);
  }
  const isSub = channel.kind === 'sub';
  const rolloff = readRolloff(ir, noise, isSub);
  const [lowHz, highHz] = isSub ? levelHz.sub : levelHz.main;
  const polarity = found.arrival ? readPolarity(ir, found.arrival).polarity : 'cannot tell';
  const heard = powerSpectrum(ir);
  const hiss = noise && powerSpectrum(noise);
  const levelDb = readLevel(heard, hiss, lowHz, highHz);
  const timing = relativeTiming(found, frame);
  notes.push(...found.notes, ...timing.notes, ...rolloff.notes);
  if (polarity === 'cannot tell') notes.push(polarityNote(isSub));
  if (levelDb === null) notes.push(levelNote);
  const origin = frame.reference?.index ?? found.arrival?.index ?? ir.zeroIndex;
  const reading: ChannelReading = {
    channel: channel.label,
    ...timing.numbers,
    levelDb,
    polarity,
    rolloff: rolloff.rolloff,
    bassMarginDb: rolloff.bassMarginDb,
    peakToNoiseDb: margin,
    decaySeconds: readDecay(ir, noise),
    faults: source.faults,
    notes,
    curves: {
      ...readResponse(heard, hiss, rolloff.curve, isSub),
      envelope: readEnvelope(ir, origin),
    },
  };
  return source.mendedHz === null ? reading : withholdMended(reading, source.mendedHz, isSub);
}

/** Pink level of the response without the noise's share; null when noise is half of it or more. */
function readLevel(
  heard: PowerSpectrum,
  hiss: PowerSpectrum | null,
  lowHz: number,
  highHz: number,
): number | null {
  const whole = bandPower(heard, lowHz, highHz);
  const own = whole - (hiss ? bandPower(hiss, lowHz, highHz) : 0);
  return own > whole / 2 ? powerToDb(own) : null;
}

const levelNote =
  'No level: the noise is as strong as the speaker in the band it is read in. More level, or less hum, would settle it.';

/** A channel of which no number can be told. */
function unread(
  channel: Channel,
  faults: readonly Fault[],
  notes: readonly string[],
): ChannelReading {
  return {
    channel: channel.label,
    ...untimed,
    levelDb: null,
    polarity: 'cannot tell',
    rolloff: null,
    bassMarginDb: null,
    peakToNoiseDb: null,
    decaySeconds: null,
    faults,
    notes,
    curves: null,
  };
}

function relativeTiming(
  { arrival, ceilingSeconds }: ArrivalFinding,
  { reference, referenceDistanceMetres, metresPerSecond }: ReadingFrame,
): { readonly numbers: Timing; readonly notes: readonly string[] } {
  if (!arrival) return { numbers: untimed, notes: [] };
  if (!reference) {
    const note =
      'No distance: the arrival of the reference speaker could not be told. Repeat the take.';
    return { numbers: untimed, notes: [note] };
  }
  const metres = (seconds: number): number =>
    referenceDistanceMetres + metresPerSecond * (seconds - reference.seconds);
  const arrivalSeconds = arrival.seconds - reference.seconds;
  const own = (arrival.interval[1] - arrival.interval[0]) / 2;
  const its = (reference.interval[1] - reference.interval[0]) / 2;
  const half = arrival.seconds === reference.seconds ? 0 : Math.hypot(own, its);
  return {
    numbers: {
      arrivalSeconds,
      arrivalInterval: [arrivalSeconds - half, arrivalSeconds + half],
      distanceMetres: metres(arrival.seconds),
      distanceInterval: [metres(arrival.seconds - half), metres(arrival.seconds + half)],
      ceilingPathMetres: ceilingSeconds === null ? null : metres(ceilingSeconds),
    },
    notes: [],
  };
}

/**
 * Whether the response's largest sample stands well over the noise: that of the silence through the
 * same path, or, without it, the response's own before anything can arrive. Noise alone has a
 * largest sample too, some 14 dB over its rms, which must not be timed.
 */
function carriesSound(ir: ImpulseResponse, noise: ImpulseResponse | null): boolean {
  const { samples, zeroIndex } = ir;
  const quiet = noise?.samples ?? samples.subarray(0, Math.floor(earlyShare * zeroIndex));
  return largest(samples) > 10 ** (silentDb / 20) * rms(quiet);
}

function polarityNote(isSub: boolean): string {
  return isSub
    ? 'Polarity of a sub cannot be told from its arrival; it is set together with its distance.'
    : 'Polarity cannot be told: its two signs disagree or the noise is too near. A reading close to the speaker would settle it.';
}

function largest(samples: Float64Array): number {
  return samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}

function rms(samples: Float64Array): number {
  return Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);
}
