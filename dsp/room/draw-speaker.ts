import { seededRandom } from '../signal/random';
import { ventedAlignment, ventedFromDriver, type Box } from './box';
import { directionFrom, type Point } from './point';
import type { Bump, Speaker, SpeakerModel } from './speaker';
import { boxCutoffHz } from './truth';

export interface SpeakerOptions {
  /** Default main. A bounced speaker points at the ceiling and leaks little towards the seat. */
  readonly kind?: 'main' | 'bounced' | 'sub';
  readonly box?: 'sealed' | 'vented';
  /** Range of the box's own −3 dB frequency, drawn evenly in its logarithm; default 20 to 120. */
  readonly f3Hz?: readonly [number, number];
  /** A box off its alignment (losses, wrong tuning) and at times a protection high-pass. */
  readonly misaligned?: boolean;
}

/** A plausible speaker; the same seed and options give the same speaker. */
export function drawSpeaker(seed: number, options: SpeakerOptions = {}): SpeakerModel {
  const random = seededRandom(seed);
  for (let i = 0; i < 8; i++) random();
  const between = (low: number, high: number): number => low + (high - low) * random();
  const kind = options.kind ?? 'main';
  const [low, high] = options.f3Hz ?? (kind === 'sub' ? [20, 30] : [20, 120]);
  const misaligned = options.misaligned ?? false;
  const boxKind = options.box ?? (random() < 0.5 ? 'sealed' : 'vented');
  const f3Hz = low * (high / low) ** random();
  const shape =
    boxKind === 'sealed'
      ? sealed(misaligned ? between(0.45, 1.3) : 0.6 + 0.4 * random())
      : misaligned
        ? misalignedVented(between)
        : ventedAlignment(1, between(-1, 1));
  const box = { ...shape, resonanceHz: (shape.resonanceHz * f3Hz) / boxCutoffHz(shape) };
  const protectionHz = misaligned && random() < 0.4 ? f3Hz * between(0.45, 0.9) : null;
  const corner = { main: between(900, 2500), bounced: between(120, 220), sub: 1e6 }[kind];
  return {
    box,
    protectionHz,
    upper:
      kind === 'sub'
        ? { hz: between(120, 200), order: 4 }
        : { hz: between(20000, 32000), order: 2 },
    bumps: kind === 'sub' ? [] : drawBumps(between),
    tiltDbPerOctave: kind === 'sub' ? 0 : between(-0.3, 0.3),
    crossoverHz: kind === 'sub' ? null : 1500 * 2 ** between(0, 1),
    directivity: { cornerHz: corner, floorDb: kind === 'bounced' ? between(-17, -10) : -22 },
    gainDb: between(-3, 3),
    inverted: false,
    delaySeconds: 0,
  };
}

/** A speaker model in its place, its axis towards `aimAt`. */
export function placeSpeaker(model: SpeakerModel, position: Point, aimAt: Point): Speaker {
  return { ...model, position, aim: directionFrom(position, aimAt) };
}

function sealed(q: number): Box {
  return { kind: 'sealed', resonanceHz: 1, q };
}

/** A driver near the lossless maximally flat alignment, with box losses, tuning and volume off. */
function misalignedVented(between: (low: number, high: number) => number): Box {
  return ventedFromDriver({
    driverHz: 1,
    qt: between(0.32, 0.46),
    h: between(0.8, 1.25),
    alpha: between(0.8, 2),
    ql: between(5, 15),
  });
}

/** Nine bumps about an octave apart from 90 Hz; together a ripple of about 1 dB. */
function drawBumps(between: (low: number, high: number) => number): Bump[] {
  return Array.from({ length: 8 }, (_, i) => ({
    hz: 90 * 2 ** (i + between(-0.4, 0.4)),
    gainDb: between(-1.6, 1.6),
    q: between(0.7, 3),
  }));
}
