import { realSignal, type HalfSpectrum } from '../../dsp/fft/fft';
import { drawSpeaker, type SpeakerOptions } from '../../dsp/room/draw-speaker';
import type { SpeakerModel } from '../../dsp/room/speaker';
import { speakerResponses } from '../../dsp/room/speaker-response';
import { truthOf } from '../../dsp/room/truth';
import { fitRolloff, isRefusal, type RolloffOptions } from '../../dsp/rolloff/fit-rolloff';
import {
  averageRolloffBands,
  rolloffBands,
  type RolloffBands,
} from '../../dsp/rolloff/rolloff-bands';
import { gaussian, seededRandom } from '../../dsp/signal/random';
import { TRANSFER_RATE, TRANSFER_SIZE, type RoomTransfers } from './rolloff-transfers';

const DELAY_SECONDS = 0.1;

/** One frequency: truth, and low, median and high of the fit. */
export interface RolloffCrossing {
  readonly truthHz: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** One fit held against its truth; null crossings when refused. */
export interface RolloffCase {
  readonly condition: RolloffCondition;
  readonly f3: RolloffCrossing | null;
  readonly f6: RolloffCrossing | null;
  readonly f10: RolloffCrossing | null;
  readonly f6Upper80Hz: number | null;
  readonly box: 'right' | 'wrong' | 'open';
}

export type RolloffCondition =
  | 'one position'
  | 'one position, misaligned'
  | 'one position, noisy'
  | 'one position, sheet'
  | 'eight positions'
  | 'two of a model'
  | 'five of a model'
  | 'subs, one position'
  | 'close'
  | 'close, misaligned';

/** All conditions in one room; speakers follow from the seed. */
export function measureRolloffs(room: RoomTransfers, seed: number): RolloffCase[] {
  const { seats, others, close } = room;
  const main = seats[0] ?? close;
  const places = [main, ...others];
  const cases: RolloffCase[] = [];
  const measure = (
    condition: RolloffCondition,
    transfers: readonly HalfSpectrum[],
    options: RolloffOptions,
    speaker: SpeakerModel,
    noiseDb: number | null = null,
  ): void => {
    const bands = transfers.map((transfer, i) =>
      bandsOf(transfer, speaker, noiseDb, 50 * seed + cases.length + i / 10),
    );
    cases.push(hold(condition, averageRolloffBands(bands), options, speaker));
  };
  places.forEach((transfer, i) => {
    const own = 10 * seed + i;
    const plain = speakerOf(own, {});
    const room1 = { place: 'room' } as const;
    measure('one position', [transfer], room1, plain);
    measure('one position, misaligned', [transfer], room1, speakerOf(own, { misaligned: true }));
    const random = seededRandom(own + 0.1);
    measure('one position, noisy', [transfer], room1, speakerOf(own + 5, {}), -10 - 25 * random());
    const sheetF3Hz = truthOf(plain).f3Hz * (1 + 0.15 * gaussian(random)());
    measure('one position, sheet', [transfer], { place: 'room', sheetF3Hz }, plain);
  });
  const speaker = speakerOf(10 * seed + 6, {});
  measure('eight positions', seats, { place: 'room', positions: 8 }, speaker);
  measure('two of a model', places.slice(0, 2), { place: 'room', sameModel: 2 }, speaker);
  measure('five of a model', places, { place: 'room', sameModel: 5 }, speaker);
  const sub = speakerOf(10 * seed + 7, { kind: 'sub' });
  measure('subs, one position', [main], { place: 'room', upperHz: 90 }, sub);
  measure('close', [close], { place: 'close' }, speaker);
  const odd = speakerOf(10 * seed + 8, { misaligned: true });
  measure('close, misaligned', [close], { place: 'close' }, odd);
  return cases;
}

function speakerOf(seed: number, options: SpeakerOptions): SpeakerModel {
  return drawSpeaker(seed, options);
}

/** `noiseDb`: power of white noise in the bands re the 180 to 500 Hz mean; null for none. */
function bandsOf(
  transfer: HalfSpectrum,
  speaker: SpeakerModel,
  noiseDb: number | null,
  seed: number,
): RolloffBands {
  const spectrum = spectrumOf(transfer, speaker);
  const samples = realSignal(spectrum, TRANSFER_SIZE);
  const frame = { sampleRate: TRANSFER_RATE, zeroIndex: Math.round(DELAY_SECONDS * TRANSFER_RATE) };
  if (noiseDb === null) return rolloffBands({ samples, ...frame }, null);
  // White noise of variance σ² over the 1.35 s that are looked at has the power 1.35 fs σ².
  const power = meanPower(spectrum, 180, 500) * 10 ** (noiseDb / 10);
  const sigma = Math.sqrt(power / (1.35 * TRANSFER_RATE));
  const normal = gaussian(seededRandom(seed));
  const noisy = samples.map((value) => value + sigma * normal());
  const silence = samples.map(() => sigma * normal());
  return rolloffBands({ samples: noisy, ...frame }, { samples: silence, ...frame });
}

function meanPower(spectrum: HalfSpectrum, lowHz: number, highHz: number): number {
  const first = Math.ceil((lowHz * TRANSFER_SIZE) / TRANSFER_RATE);
  const last = Math.floor((highHz * TRANSFER_SIZE) / TRANSFER_RATE);
  let sum = 0;
  for (let k = first; k <= last; k++) {
    sum += (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
  }
  return sum / (last - first + 1);
}

/** Transfer times speaker, later by DELAY_SECONDS so that what precedes the peak stays inside. */
function spectrumOf(transfer: HalfSpectrum, speaker: SpeakerModel): HalfSpectrum {
  const spectrum = new Float64Array(TRANSFER_SIZE + 2);
  const response = speakerResponses(speaker);
  for (let k = 1; k < TRANSFER_SIZE / 2; k++) {
    const hz = (k * TRANSFER_RATE) / TRANSFER_SIZE;
    const [a, b] = response(hz);
    const turn = -2 * Math.PI * hz * DELAY_SECONDS;
    const [re, im] = [
      a * Math.cos(turn) - b * Math.sin(turn),
      a * Math.sin(turn) + b * Math.cos(turn),
    ];
    const x = transfer[2 * k] ?? 0;
    const y = transfer[2 * k + 1] ?? 0;
    spectrum[2 * k] = x * re - y * im;
    spectrum[2 * k + 1] = x * im + y * re;
  }
  return spectrum;
}

function hold(
  condition: RolloffCondition,
  bands: RolloffBands,
  options: RolloffOptions,
  speaker: SpeakerModel,
): RolloffCase {
  const fit = fitRolloff(bands, options);
  if (isRefusal(fit)) {
    return { condition, f3: null, f6: null, f10: null, f6Upper80Hz: null, box: 'open' };
  }
  const truth = truthOf(speaker, options.upperHz === undefined ? [180, 500] : [40, 80]);
  const kind = truth.box === 'sealed' ? 'closed' : 'vented';
  const box = fit.box.kind === 'cannot tell' ? 'open' : fit.box.kind === kind ? 'right' : 'wrong';
  return {
    condition,
    f3: { truthHz: truth.f3Hz, ...fit.f3Hz },
    f6: { truthHz: truth.f6Hz, ...fit.f6Hz },
    f10: { truthHz: truth.f10Hz, ...fit.f10Hz },
    f6Upper80Hz: fit.f6Upper80Hz,
    box,
  };
}
