import { msg } from '@lit/localize';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { rolloffBands } from '../../dsp/rolloff/rolloff-bands';
import { readPolarity } from '../../dsp/timing/polarity';
import type { Channel } from '../system/channel';
import type { CloseTo } from './close-to';
import { keepBass } from './kept-bass';
import { moveLevel } from './move-level';
import { readArrival, type ArrivalFinding } from './read-arrival';
import { readEnvelope, readResponse } from './read-curves';
import { readMargins } from './noise-floor-margins';
import { readBass } from './read-bass';
import { readDecay } from './read-decay';
import { readLevel } from './read-level';
import { readRolloffOf } from './read-rolloff';
import type { ChannelReading, DistortionReading, Fault } from './reading';
import { marginBetween } from './rolloff-finding';
import type { ReadingFrame } from './reading-frame';
import { relateTiming } from './relate-timing';
import { sayIfSilent } from './silent-channel';
import { spectrumWithout } from './spectrum-without';
import { takeOutDelay } from './take-out-delay';
import { untouched, type ChannelInForce } from './take-out-settings';
import { untimed } from './untimed';
import { withholdMended } from './withhold-mended';

/** One channel's impulse response, and what it is read against. */
export interface ChannelSource {
  readonly channel: Channel;
  /** Null when nothing can be read. */
  readonly ir: ImpulseResponse | null;
  /** Silence through the same deconvolution; null when the capture holds none. */
  readonly noise: ImpulseResponse | null;
  /** How much silence that rests on, where it may be less than its response lasts. */
  readonly silenceSeconds?: number | undefined;
  readonly faults: readonly Fault[];
  /** Why nothing can be read of this segment; null when it can. */
  readonly spoilt: string | null;
  /** Where in the sweep lost or repeated audio was mended, Hz; null where nothing was. */
  readonly mendedHz: number | null;
  /** Sentences on the sweeps, which come before what is read of them. */
  readonly notes: readonly string[];
  /** Left out when nothing was read. */
  readonly distortion?: DistortionReading;
  /** What the processor does to the channel; left out: nothing. */
  readonly inForce?: ChannelInForce;
  /** The microphone was held to this speaker; null or left out: at a seat or near another one. */
  readonly close?: CloseTo | null;
}

/** What the port of a box says of its roll-off. */
const portAlone = {
  rolloff: null,
  curve: null,
  get notes() {
    return [
      msg(
        'No roll-off: a port sounds in its own narrow band, and counts together with the cone. Take the cone close by too, with its port said to be unheard there.',
      ),
    ];
  },
};

/** Reads everything of one channel; numbers that cannot be told are null, with a sentence. */
export function readChannel(source: ChannelSource, frame: ReadingFrame): ChannelReading {
  const { channel, ir, noise, inForce = untouched } = source;
  const notes = [...source.notes];
  if (!ir)
    return unread(channel, source.faults, [
      ...notes,
      ...(source.spoilt === null ? [] : [source.spoilt]),
    ]);
  const found = readArrival(ir, channel);
  const margin = found.arrival?.peakToNoiseDb ?? null;
  const silent = sayIfSilent(channel, ir, noise, found.arrival);
  if (silent !== null) {
    return unread(channel, [...source.faults, { kind: 'silent', sentence: silent }], notes);
  }
  const isSub = channel.kind === 'sub';
  const bands = rolloffBands(ir, noise);
  const rolloff = source.close?.port
    ? { ...portAlone, bassMarginDb: marginBetween(bands.hz, bands.marginDb, 40, 80) }
    : readRolloffOf(bands, isSub, inForce.filter, null, source.close ?? null);
  const polarity = found.arrival ? readPolarity(ir, found.arrival).polarity : 'cannot tell';
  const heard = spectrumWithout(inForce, ir);
  const hiss = noise && spectrumWithout(inForce, noise);
  const gainChanged = source.faults.some(({ kind }) => kind === 'gain');
  const { silenceSeconds } = source;
  const level = gainChanged ? null : readLevel({ ir, noise, heard, hiss, silenceSeconds }, isSub);
  const timeAndLevelHold = frame.reference !== null && !gainChanged && source.mendedHz === null;
  const timing = timeWithout(inForce, found, frame);
  notes.push(...found.notes, ...timing.notes, ...inForce.notes, ...rolloff.notes);
  if (polarity === 'cannot tell') notes.push(polarityNote(isSub));
  if (level === null) notes.push(gainChanged ? gainNote() : levelNote());
  const delaySeconds = inForce.delay?.seconds ?? 0;
  const originSeconds = frame.reference
    ? frame.reference.seconds + delaySeconds
    : (found.arrival?.seconds ?? 0);
  const origin = ir.zeroIndex + originSeconds * ir.sampleRate;
  const reading: ChannelReading = {
    channel: channel.label,
    ...timing.numbers,
    ...moveLevel(level ?? unlevelled, -inForce.trimDb),
    polarity,
    rolloff: rolloff.rolloff,
    ...(inForce.filter ? {} : { bassBands: keepBass(bands) }),
    bassMarginDb: rolloff.bassMarginDb,
    peakToNoiseDb: margin,
    decaySeconds: readDecay(ir, noise),
    bass: timeAndLevelHold ? readBass(ir, frame.reference?.seconds ?? 0, inForce) : null,
    ...(source.distortion && { distortion: source.distortion }),
    faults: source.faults,
    margins: readMargins(heard, hiss, isSub),
    notes,
    curves: {
      ...readResponse(heard, hiss, rolloff.curve, isSub),
      envelope: readEnvelope(ir, origin),
    },
  };
  return source.mendedHz === null ? reading : withholdMended(reading, source.mendedHz, isSub);
}

function timeWithout({ delay }: ChannelInForce, found: ArrivalFinding, frame: ReadingFrame) {
  if (!delay) return { numbers: untimed, notes: [] };
  const { arrival, ceilingSeconds } = found;
  return relateTiming(
    {
      ...found,
      arrival: arrival && takeOutDelay(arrival, delay),
      ceilingSeconds: ceilingSeconds === null ? null : ceilingSeconds - delay.seconds,
    },
    frame,
  );
}

const levelNote = () =>
  msg(
    'No level: the noise is as strong as the speaker in the band it is read in. More level would settle it.',
  );

const gainNote = () =>
  msg(
    "No level: the gain is not that of the reference speaker's sweep. Leave all volumes alone and repeat this segment.",
  );

/** The level of a channel that has none. */
const unlevelled = { levelDb: null, levelInterval: null } as const;

/** A channel of which no number can be told. */
function unread(
  channel: Channel,
  faults: readonly Fault[],
  notes: readonly string[],
): ChannelReading {
  return {
    channel: channel.label,
    ...untimed,
    ...unlevelled,
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

function polarityNote(isSub: boolean): string {
  return isSub
    ? msg(
        'Polarity of a sub cannot be told from its arrival: set it together with its distance, by how it sums with the speakers.',
      )
    : msg(
        'Polarity cannot be told: its two signs disagree or the noise is too near. A reading close to the speaker would settle it.',
      );
}
