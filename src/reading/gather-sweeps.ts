import { msg, str } from '@lit/localize';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { ScheduledSegment } from '../take/schedule';
import type { SegmentCheck } from './check-capture';
import type { Responder, SegmentResponse } from './impulse-responses';
import { readDistortion } from './read-distortion';
import { inspectSweep, type InspectedSweep } from './inspect-sweep';
import type { DistortionReading, Fault } from './reading';

/** One segment with what is wrong with it. */
export interface CheckedSegment {
  readonly segment: ScheduledSegment;
  readonly check: SegmentCheck;
}

/** What all sweeps of one speaker give together. */
export interface GatheredSweeps {
  /** Mean of the responses in use; null when nothing of them can be trusted. */
  readonly ir: ImpulseResponse | null;
  /** Silence through the same path, at the power the noise has in the mean. */
  readonly noise: ImpulseResponse | null;
  /** How much silence that rests on; left out where the noise is not known. */
  readonly silenceSeconds?: number | undefined;
  readonly faults: readonly Fault[];
  /** Why there is no response. */
  readonly spoilt: string | null;
  /** Where in the sweep lost or repeated audio was mended, Hz; null where nothing was. */
  readonly mendedHz: number | null;
  readonly notes: readonly string[];
  /** Left out when nothing was read. */
  readonly distortion?: DistortionReading;
}

/**
 * Mean response of a speaker's sweeps: of those without a fault, and when there are none, of the
 * first that can be read at all. Sweeps left out beside good ones are told in notes and spoil
 * nothing. Throws RangeError for an empty list.
 */
export function gatherSweeps(
  planned: readonly CheckedSegment[],
  responder: Responder,
): GatheredSweeps {
  const sweeps = planned.map((sweep) => inspectSweep(sweep, responder));
  const clean = sweeps.filter(({ check }) => check.spoilt === null && check.faults.length === 0);
  const readable = sweeps.find(({ check }) => check.spoilt === null);
  const used = clean.length > 0 ? clean : readable ? [readable] : [];
  const [first] = used;
  const faults = clean.length > 0 ? [] : sweeps.flatMap(({ check }) => check.faults);
  if (!first) {
    if (!sweeps[0]) throw new RangeError('a speaker needs at least one sweep, got 0');
    const { spoilt } = sweeps[0].check;
    return { ir: null, noise: null, faults, spoilt, mendedHz: null, notes: [] };
  }
  const silence = responder.noise(first.segment, first.check.mend !== null);
  const longs = used.map(({ response }) => response?.long ?? null);
  return {
    ir: meanResponse(used.flatMap(({ response }) => response?.ir ?? [])),
    noise: scaleResponse(silence, 1 / Math.sqrt(used.length)),
    silenceSeconds: secondsOf(first.response),
    distortion: readDistortion({
      long: longs.includes(null) ? null : meanResponse(longs.flatMap((one) => one ?? [])),
      silence,
      sweeps: used.length,
      sweep: first.response?.sweep ?? null,
      damaged: faults.length > 0,
    }),
    faults,
    spoilt: null,
    mendedHz: first.check.mend?.sweepHz ?? null,
    notes: [
      ...used.flatMap((one) => one.notes),
      ...notesOf(sweeps, used),
      ...lfeNotes(first.segment),
    ],
  };
}

function secondsOf(response: SegmentResponse | null): number | undefined {
  return response?.silence ? response.silence.length / response.sweep.sampleRate : undefined;
}

/** Says how many sweeps a reading is the mean of, and why others were left out. */
function notesOf(
  sweeps: readonly InspectedSweep[],
  used: readonly InspectedSweep[],
): readonly string[] {
  if (sweeps.length === 1) return [];
  const left = sweeps.flatMap((sweep, index) => {
    if (used.includes(sweep)) return [];
    const why = firstSentence(sweep.check.faults[0]?.sentence ?? sweep.check.spoilt ?? '');
    return [msg(str`Sweep ${index + 1} of ${sweeps.length} left out: ${why}`)];
  });
  return left.length === 0
    ? []
    : [...left, msg(str`Read from ${used.length} of ${sweeps.length} sweeps.`)];
}

function lfeNotes({ replayGainDb }: ScheduledSegment): readonly string[] {
  if (replayGainDb === 0) return [];
  return [
    msg(
      str`Played over LFE, ${replayGainDb} dB quieter because it is replayed ${replayGainDb} dB louder: the level is that of the sub without this gain.`,
    ),
  ];
}

/** What a sentence says before its advice. */
function firstSentence(text: string): string {
  return text.split(/(?<=\.)\s/)[0] ?? text;
}

function meanResponse(responses: readonly ImpulseResponse[]): ImpulseResponse | null {
  const [first] = responses;
  if (!first || responses.length === 1) return first ?? null;
  const samples = new Float64Array(first.samples.length);
  for (const one of responses) {
    for (let n = 0; n < samples.length; n++) {
      samples[n] = (samples[n] ?? 0) + (one.samples[n] ?? 0) / responses.length;
    }
  }
  return { ...first, samples };
}

function scaleResponse(ir: ImpulseResponse | null, gain: number): ImpulseResponse | null {
  return ir && gain !== 1 ? { ...ir, samples: ir.samples.map((value) => gain * value) } : ir;
}
