import { drawSpeaker } from '../../dsp/room/draw-speaker';
import type { RoomPreset } from '../../dsp/room/draw-room';
import type { SpeakerModel } from '../../dsp/room/speaker';
import { truthOf, type SpeakerTruth } from '../../dsp/room/truth';
import {
  fitRolloff,
  fitRolloffTogether,
  isRefusal,
  type RolloffFit,
  type RolloffRefusal,
} from '../../dsp/rolloff/fit-rolloff';
import { coneAndPort } from '../../dsp/rolloff/cone-and-port';
import { rolloffBands, type RolloffBands } from '../../dsp/rolloff/rolloff-bands';
import { bassGrid, bassTransfer } from '../../dsp/bass/transfer';
import { gaussian, seededRandom } from '../../dsp/signal/random';
import { coneAlone, drawBassRoom, heardClose, responseThrough } from './rolloff-transfers';

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
  | 'three seats'
  | 'two of a model'
  | 'five of a model'
  | 'subs, one position'
  | 'close'
  | 'close, misaligned'
  | 'close, sealed'
  | 'close, cone and port'
  | 'close to the cone alone';

const seats = [0, 1, 2];
const places = [0, 1, 2, 3, 4];

type AddCase = (
  condition: RolloffCondition,
  speaker: SpeakerModel,
  fit: RolloffFit | RolloffRefusal,
) => void;

/** All conditions in one room; speakers follow from the seed. */
export function measureRolloffs(preset: RoomPreset, seed: number): RolloffCase[] {
  const room = drawBassRoom(preset, seed);
  const atSeats = seats.map((seat) => room.transfer(0, seat));
  const [main = null] = atSeats;
  const atMain = places.map((place) => (place === 0 ? main : room.transfer(place, 0)));
  const random = seededRandom(seed + 0.1);
  const cases: RolloffCase[] = [];
  const add: AddCase = (condition, speaker, fit) => void cases.push(hold(condition, fit, speaker));
  const bandsOf = (transfer: Float64Array | null, speaker: SpeakerModel): RolloffBands =>
    rolloffBands(responseThrough(transfer, speaker), null);
  const atSeat = { place: 'room' } as const;

  // Two places, so that twice as many rooms need not be drawn.
  for (const place of [0, 1 + (seed % 4)]) {
    const transfer = atMain[place] ?? null;
    const plain = drawSpeaker(10 * seed + place);
    const bands = bandsOf(transfer, plain);
    add('one position', plain, fitRolloff(bands, atSeat));
    if (place > 0) continue;
    const sheetF3Hz = truthOf(plain).f3Hz * (1 + 0.15 * gaussian(random)());
    add('one position, sheet', plain, fitRolloff(bands, { ...atSeat, sheetF3Hz }));
    const odd = drawSpeaker(10 * seed, { misaligned: true });
    add('one position, misaligned', odd, fitRolloff(bandsOf(transfer, odd), atSeat));
    const other = drawSpeaker(10 * seed + 5);
    const noisy = noisyBands(transfer, other, -10 - 25 * random(), seed);
    add('one position, noisy', other, fitRolloff(noisy, atSeat));
  }

  const speaker = drawSpeaker(10 * seed + 6);
  const own = atMain.map((transfer, place) => ({
    bands: bandsOf(transfer, speaker),
    speaker: String(place),
  }));
  const elsewhere = atSeats
    .slice(1)
    .map((transfer) => ({ bands: bandsOf(transfer, speaker), speaker: '0' }));
  add('three seats', speaker, fitRolloffTogether([...own.slice(0, 1), ...elsewhere], {}));
  add('two of a model', speaker, fitRolloffTogether(own.slice(0, 2), {}));
  add('five of a model', speaker, fitRolloffTogether(own, {}));

  const sub = drawSpeaker(10 * seed + 7, { kind: 'sub' });
  const subFit = fitRolloff(bandsOf(main, sub), { place: 'room', upperHz: 90 });
  cases.push(hold('subs, one position', subFit, sub, [40, 80]));

  if (seed % 2 === 0) addClose(room.close(), { seed, speaker, add });
  return cases;
}

/** Readings close to speakers, in every other room: little of a room is heard there. */
function addClose(
  close: Float64Array,
  { seed, speaker, add }: { seed: number; speaker: SpeakerModel; add: AddCase },
): void {
  const bandsOf = (model: SpeakerModel): RolloffBands =>
    rolloffBands(responseThrough(close, model), null);
  const atCone = { place: 'close' } as const;
  add('close', speaker, fitRolloff(bandsOf(speaker), atCone));
  const odd = drawSpeaker(10 * seed + 8, { misaligned: true });
  add('close, misaligned', odd, fitRolloff(bandsOf(odd), atCone));
  const cone = rolloffBands(responseThrough(close, speaker, coneAlone), null);
  add('close to the cone alone', speaker, fitRolloff(cone, { ...atCone, coneOnly: true }));
  const sealed = drawSpeaker(10 * seed + 9, { box: 'sealed' });
  add('close, sealed', sealed, fitRolloff(bandsOf(sealed), atCone));
  const vented = drawSpeaker(10 * seed + 9, { box: 'vented' });
  add(
    'close, cone and port',
    vented,
    fitRolloff(bothOpenings(close, vented, seed), { ...atCone, summed: true }),
  );
}

/**
 * Cone and port of a vented box heard one after the other and summed by their diameters, which are
 * typed 3 % wrong; the other opening is heard in both, and the port's time is up to 0.6 ms wrong.
 */
function bothOpenings(close: Float64Array, speaker: SpeakerModel, seed: number): RolloffBands {
  const random = seededRandom(seed + 0.55);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const coneRadius = between(0.05, 0.11);
  const share = between(0.3, 0.6);
  const { atCone, atPort } = heardClose({
    coneRadius,
    portRadius: share * coneRadius,
    apart: coneRadius * between(1.8, 3.5),
    lateSeconds: between(-0.0006, 0.0006),
  });
  const [cone, port] = [atCone, atPort].map((part) => ({
    transfer: bassTransfer(responseThrough(close, speaker, part), bassGrid()),
    noisePower: [],
  }));
  if (!cone || !port) throw new RangeError('both openings are heard');
  return coneAndPort(cone, port, share * between(0.97, 1.03));
}

/**
 * A speaker with noise in its response, and in the silence beside it. `noiseDb`: power of white
 * noise in the bands re the 180 to 500 Hz mean.
 */
function noisyBands(
  transfer: Float64Array | null,
  speaker: SpeakerModel,
  noiseDb: number,
  seed: number,
): RolloffBands {
  const clean = responseThrough(transfer, speaker);
  const normal = gaussian(seededRandom(seed + 0.4));
  const probe = clean.samples.map(() => normal());
  // What a unit of noise is, re the response's level: so much of it stands in noisePower.
  const tiny = { ...clean, samples: probe.map((value) => 1e-9 * value) };
  const { noisePower } = rolloffBands(clean, tiny);
  const unit = noisePower.subarray(43).reduce((sum, p) => sum + p, 0) / 18;
  const sigma = 1e-9 * Math.sqrt(10 ** (noiseDb / 10) / unit);
  return rolloffBands(
    { ...clean, samples: clean.samples.map((value) => value + sigma * normal()) },
    { ...clean, samples: probe.map((value) => sigma * value) },
  );
}

function hold(
  condition: RolloffCondition,
  fit: RolloffFit | RolloffRefusal,
  speaker: SpeakerModel,
  passbandHz: readonly [number, number] = [180, 500],
): RolloffCase {
  if (isRefusal(fit)) {
    return { condition, f3: null, f6: null, f10: null, f6Upper80Hz: null, box: 'open' };
  }
  const truth = knownTruth(speaker, passbandHz);
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

const truths = new WeakMap<SpeakerModel, SpeakerTruth>();

/** truthOf a speaker, which all its cases are held against; its passband is the same in all. */
function knownTruth(speaker: SpeakerModel, passbandHz: readonly [number, number]): SpeakerTruth {
  const truth = truths.get(speaker) ?? truthOf(speaker, passbandHz);
  truths.set(speaker, truth);
  return truth;
}
