import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { noiseSpectrum, type NoiseSpectrum } from '../../dsp/distortion/band-energy';
import type { HarmonicCurve, HarmonicReading } from '../../dsp/distortion/harmonic-reading';
import { linearOnset } from '../../dsp/distortion/linear-onset';
import { harmonicWindows } from '../../dsp/distortion/harmonic-windows';
import { readHarmonics } from '../../dsp/distortion/read-harmonics';
import { sumHarmonics } from '../../dsp/distortion/sum-harmonics';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { microphoneGainDb } from '../../dsp/response/microphone-correction';
import type { SweepSpec } from '../../dsp/signal/sweep';
import type { MicrophoneCalibration } from '../microphone/calibration';
import type { DistortionReading } from './reading';
import { leastSweepSeconds } from './response-lengths';

/** What distortion is read from. */
export interface DistortionSource {
  /** Mean response from before its harmonics on; null where they cannot be read. */
  readonly long: ImpulseResponse | null;
  /** Silence through the deconvolution of one sweep; null when the capture holds too little. */
  readonly silence: ImpulseResponse | null;
  /** Sweeps in the mean. */
  readonly sweeps: number;
  /** The sweep as the response's clock counts it; null when none was read. */
  readonly sweep: SweepSpec | null;
  readonly damaged: boolean;
}

/**
 * Harmonics 2 to 5 and their sum of one channel, re the fundamental as the microphone hears it; or
 * one sentence why they cannot be told and what would settle it.
 */
export function readDistortion({
  long,
  silence,
  sweeps,
  sweep,
  damaged,
}: DistortionSource): DistortionReading {
  const seconds = sweep ? sweep.lengthSamples / sweep.sampleRate : 0;
  if (damaged || !sweep) {
    return untold(msg('a damaged sweep distorts by itself'), msg('Repeat this speaker'));
  }
  if (seconds < leastSweepSeconds) {
    const why = msg(
      str`in a sweep of ${withUnit(numberText(seconds, 1), 's')} the room's decay covers the harmonics`,
    );
    return untold(why, msg(str`Use sweeps of ${leastSweepSeconds} s or more`));
  }
  if (!long) {
    const why = msg('where sweeps overlap, one decays over the harmonics of the next');
    return untold(why, msg('Take it with sweeps one after the other'));
  }
  if (!silence) {
    const why = msg('the capture holds too little silence to know the noise by');
    return untold(why, msg('Start the recording before the take'));
  }
  const onset = linearOnset(long);
  const [early] = harmonicWindows(sweep, long.sampleRate, onset).toReversed();
  if (!early || early.start < 0) {
    const why = msg('the speaker arrives too long before the reference speaker');
    return untold(why, msg('Measure it alone'));
  }
  const noise = spectrumOf(silence, sweeps);
  return { kind: 'curves', ...rounded(readHarmonics(long, sweep, onset, noise)) };
}

/** Takes the microphone's response out: of a harmonic as it is there against the fundamental. */
export function correctDistortion(
  distortion: DistortionReading,
  microphone: MicrophoneCalibration,
): DistortionReading {
  if (distortion.kind !== 'curves') return distortion;
  const { hz } = distortion;
  const gains = (order: number): number[] => hz.map((f) => microphoneGainDb(microphone, order * f));
  const own = gains(1);
  const without = (values: readonly number[]): number[] =>
    values.map((db, i) => db - (own[i] ?? 0));
  const harmonics = distortion.harmonics.map((harmonic) => {
    const its = gains(harmonic.order);
    const lower = (values: readonly (number | null)[]): (number | null)[] =>
      values.map((db, i) => (db === null ? null : db - (its[i] ?? 0) + (own[i] ?? 0)));
    return { ...harmonic, db: lower(harmonic.db), floorDb: lower(harmonic.floorDb) };
  });
  return {
    kind: 'curves',
    ...rounded({
      ...distortion,
      fundamentalDb: without(distortion.fundamentalDb),
      fundamentalNoiseDb: without(distortion.fundamentalNoiseDb),
      harmonics,
      total: sumHarmonics(harmonics),
    }),
  };
}

function untold(why: string, action: string): DistortionReading {
  return { kind: 'cannot tell', sentence: msg(str`No distortion: ${why}. ${action}.`) };
}

/** Spectra of the silences last asked for: all speakers of a take share theirs. */
const spectra = new WeakMap<ImpulseResponse, Map<number, NoiseSpectrum>>();

function spectrumOf(silence: ImpulseResponse, sweeps: number): NoiseSpectrum {
  const known = spectra.get(silence) ?? new Map<number, NoiseSpectrum>();
  const spectrum = known.get(sweeps) ?? noiseSpectrum(silence, sweeps);
  known.set(sweeps, spectrum);
  spectra.set(silence, known);
  return spectrum;
}

/** To 0.01 dB, so that a session stays small. */
function rounded(reading: HarmonicReading): HarmonicReading {
  return {
    hz: reading.hz,
    fundamentalDb: reading.fundamentalDb.map(roundDb),
    fundamentalNoiseDb: reading.fundamentalNoiseDb.map(roundDb),
    harmonics: reading.harmonics.map(({ order, ...rest }) => ({ order, ...roundCurve(rest) })),
    total: roundCurve(reading.total),
    apartFromHz: reading.apartFromHz,
  };
}

function roundCurve({ db, floorDb, limitedBy }: HarmonicCurve): HarmonicCurve {
  return { db: db.map(roundTold), floorDb: floorDb.map(roundTold), limitedBy };
}

function roundDb(value: number): number {
  return Math.round(value * 100) / 100;
}

function roundTold(value: number | null): number | null {
  return value === null ? null : roundDb(value);
}
