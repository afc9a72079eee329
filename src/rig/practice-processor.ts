import { realSignal, realSpectrum } from '../../dsp/fft/fft';
import { peak, sectionsAt } from '../../dsp/room/section';
import type { ChannelLabel } from '../system/channel';
import type { ProcessorSettings } from '../system/processor-settings';
import { practiceFilter } from './practice-filter';
import { channelResponse } from './practice-response';
import type { PracticeSlip } from './practice-slips';
import type { PracticeFaults, PracticeSystem } from './practice-system';
import { practiceWays, type PracticeWay } from './practice-ways';

/** A processor before the speakers of a practice room; plain data, so that it travels to a worker. */
export interface PracticeProcessor {
  /** What was to be typed into it. */
  readonly typed: ProcessorSettings;
  /** What was typed or left otherwise. */
  readonly slips: readonly PracticeSlip[];
}

/**
 * What the microphone hears of a channel that goes through a processor, twice as long as the room's
 * responses; null for silence. Delays are whole samples. Keeps the response of every output.
 */
export function processedResponses(
  system: PracticeSystem,
  processor: PracticeProcessor,
  faults: PracticeFaults,
  sampleRate: number,
): (channel: ChannelLabel) => Float64Array | null {
  const labels = system.speakers.map(({ channel }) => channel);
  const outputs = new Map<ChannelLabel, Float64Array | null>();
  const spectrumOf = (output: ChannelLabel): Float64Array | null => {
    const known = outputs.get(output);
    if (known !== undefined) return known;
    const response = channelResponse(system, output, faults, sampleRate);
    const spectrum = response && realSpectrum(response, 2 * response.length);
    outputs.set(output, spectrum);
    return spectrum;
  };
  return (channel) => {
    let sum: Float64Array | null = null;
    for (const way of practiceWays(processor, labels, channel)) {
      const spectrum = spectrumOf(way.output);
      if (!spectrum) continue;
      sum ??= new Float64Array(spectrum.length);
      addThrough(sum, spectrum, way, sampleRate);
    }
    return sum && realSignal(sum, sum.length - 2);
  };
}

/** sum ← sum + spectrum · H(f). */
function addThrough(
  sum: Float64Array,
  spectrum: Float64Array,
  { filters, equaliserDb, delaySeconds, gainDb, inverted }: PracticeWay,
  sampleRate: number,
): void {
  const last = spectrum.length / 2 - 1;
  const hzPerBin = sampleRate / (2 * last);
  const samples = Math.round(delaySeconds * sampleRate);
  const gain = 10 ** (gainDb / 20) * (inverted ? -1 : 1);
  const equaliser =
    equaliserDb === 0 ? [] : [peak(160, equaliserDb, 0.8), peak(4000, -equaliserDb, 0.8)];
  for (let k = 1; k < last; k++) {
    const hz = k * hzPerBin;
    let [re, im] = sectionsAt(equaliser, hz);
    for (const filter of filters) {
      const [a, b] = practiceFilter(filter, hz);
      [re, im] = [re * a - im * b, re * b + im * a];
    }
    const turn = (-Math.PI * k * samples) / last;
    const [cos, sin] = [gain * Math.cos(turn), gain * Math.sin(turn)];
    [re, im] = [re * cos - im * sin, re * sin + im * cos];
    const [x, y] = [spectrum[2 * k] ?? 0, spectrum[2 * k + 1] ?? 0];
    sum[2 * k] = (sum[2 * k] ?? 0) + x * re - y * im;
    sum[2 * k + 1] = (sum[2 * k + 1] ?? 0) + x * im + y * re;
  }
}

/**
 * How much a processor's dynamics turn down a sound of this peak, dB re full scale, as a factor;
 * 1 without. A sound is taken as steady: it is as loud from its start to its end.
 */
export function dynamicsGain({ slips }: PracticeProcessor, peakDb: number): number {
  const overs = slips.flatMap((slip) =>
    slip.kind === 'dynamics' ? [slip.share * Math.max(0, peakDb - slip.thresholdDb)] : [],
  );
  return 10 ** (-overs.reduce((sum, over) => sum + over, 0) / 20);
}
