import {
  coneResponse,
  polynomialResponse,
  sealedResponse,
  ventedAlignment,
  type HighPassResponse,
} from './box-response';
import { multiply } from './complex';

export type BoxKind = 'closed' | 'vented';

/** A shape of roll-off at f0 = 1 Hz with its share of the prior mass of its kind. */
export interface Candidate {
  readonly kind: BoxKind;
  readonly share: number;
  /** The speaker's own response. */
  readonly whole: HighPassResponse;
  /** What the microphone hears of it. */
  readonly heard: HighPassResponse;
}

const CLOSED_Q = steps(0.4, 1.4, 0.1);
const VENTED_T = steps(-1, 1, 0.25);
const CONE_LOSS = steps(0, 0.36, 0.06);
/** Corner of a protection high-pass, of f0. */
const PROTECTION = [0.5, 0.7, 0.9];
const PROTECTED_SHARE = 0.25;
/** Fewer are guarded than a close look must allow for. */
const GUARDED_SHARE = 0.2;
const MISALIGNED_SHARE = 0.4;
const BOX_LOSS_Q = 7;

/**
 * Closed boxes of Q 0.4 to 1.4, some behind a second-order protection high-pass, and vented boxes
 * on the line of alignments: what can be told apart at a seat.
 */
export function seatBoxes(): Candidate[] {
  return [
    ...closedBoxes(CLOSED_Q, 1 - GUARDED_SHARE),
    ...closedBoxes(steps(0.5, 1.1, 0.3), GUARDED_SHARE).flatMap(protect),
    ...alignedBoxes(1),
  ];
}

/**
 * Closed and aligned vented boxes and, beside them, vented boxes off their alignment with losses,
 * and both kinds behind a protection high-pass: for places where the shape can be seen.
 */
export function wideBoxes(): Candidate[] {
  return [
    ...closedBoxes(CLOSED_Q, 1 - PROTECTED_SHARE),
    ...closedBoxes(steps(0.5, 1.3, 0.2), PROTECTED_SHARE).flatMap(protect),
    ...alignedBoxes(1 - PROTECTED_SHARE - MISALIGNED_SHARE),
    ...misalignedBoxes(MISALIGNED_SHARE),
    ...steps(-0.75, 0.75, 0.5).flatMap((t) => protect(aligned(t, PROTECTED_SHARE / 4))),
  ];
}

/** Closed boxes, and vented ones whose cone alone is heard, the port leaking 0 to 36 %. */
export function conesOnly(): Candidate[] {
  const cones = VENTED_T.flatMap((t) => {
    const d = ventedAlignment(t);
    return CONE_LOSS.map((loss) => ({
      ...aligned(t, 1 / (VENTED_T.length * CONE_LOSS.length)),
      heard: coneResponse(1, d, (d.a3 / d.a1) * (1 - loss)),
    }));
  });
  return [...closedBoxes(CLOSED_Q, 1), ...cones];
}

function closedBoxes(qs: readonly number[], share: number): Candidate[] {
  const mass = qs.map((q) => Math.exp(-0.5 * ((q - 0.78) / 0.25) ** 2));
  const total = mass.reduce((sum, one) => sum + one, 0);
  return qs.map((q, i) => {
    const whole = sealedResponse(1, q);
    return { kind: 'closed', share: (share * (mass[i] ?? 0)) / total, whole, heard: whole };
  });
}

function alignedBoxes(share: number): Candidate[] {
  return VENTED_T.map((t) => aligned(t, share / VENTED_T.length));
}

function aligned(t: number, share: number): Candidate {
  const whole = polynomialResponse(1, ventedAlignment(t));
  return { kind: 'vented', share, whole, heard: whole };
}

function misalignedBoxes(share: number): Candidate[] {
  const each = share / 27;
  return [0.8, 1, 1.25].flatMap((h) =>
    [0.7, 1.2, 2].flatMap((alpha) =>
      [0.32, 0.4, 0.5].map((q): Candidate => {
        const whole = lossyVentedResponse(h, alpha, q, BOX_LOSS_Q);
        return { kind: 'vented', share: each, whole, heard: whole };
      }),
    ),
  );
}

/** Vented box with leakage loss QL, driver at 1 Hz. Small, JAES 1973. */
function lossyVentedResponse(h: number, alpha: number, q: number, lossQ: number): HighPassResponse {
  // Over h² this is s⁴/D(s) in units of √h, D as in VentedPolynomial.
  const root = Math.sqrt(h);
  return polynomialResponse(root, {
    a1: root * (1 / (h * q) + 1 / lossQ),
    a2: (alpha + 1) / h + 1 / (lossQ * q) + h,
    a3: (1 / lossQ + h / q) / root,
  });
}

function protect(candidate: Candidate): Candidate[] {
  return PROTECTION.map((corner) => {
    const guard = sealedResponse(corner, Math.SQRT1_2);
    const whole: HighPassResponse = (hz, growthHz) =>
      multiply(candidate.whole(hz, growthHz), guard(hz, growthHz));
    return { ...candidate, share: candidate.share / PROTECTION.length, whole, heard: whole };
  });
}

function steps(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
}
