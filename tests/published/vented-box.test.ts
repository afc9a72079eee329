// Lossless vented-box alignments: Thiele, "Loudspeakers in Vented Boxes", Proc. IRE Australia 1961,
// reprinted JAES 19 (1971); Small, "Vented-Box Loudspeaker Systems", JAES 21 (1973). ALIGNMENTS were
// solved in double precision outside this project; THIELE_TABLE are the printed figures.
import { describe, it } from 'vitest';
import { polynomialResponse, ventedBox, ventedResponse } from '../../dsp/rolloff/box-response';
import { crossingHz } from '../../dsp/rolloff/crossing';
import { squared } from '../../dsp/rolloff/complex';
import { expectClose } from '../close';

const HALF_POWER_DB = 10 * Math.log10(2);

/** type, Qt, h, α, f3/fs, ripple dB (Chebyshev only). */
const ALIGNMENTS: readonly (readonly [string, number, number, number, number, number])[] = [
  ['QB3', 0.18, 1.9968, 10.4449, 2.6792, 0],
  ['QB3', 0.2, 1.8042, 8.2448, 2.3879, 0],
  ['QB3', 0.209, 1.7298, 7.4543, 2.2738, 0],
  ['QB3', 0.25, 1.4606, 4.8667, 1.8494, 0],
  ['QB3', 0.259, 1.4133, 4.4563, 1.7721, 0],
  ['QB3', 0.3, 1.2354, 3.0293, 1.4679, 0],
  ['QB3', 0.303, 1.2244, 2.9469, 1.4481, 0],
  ['QB3', 0.35, 1.0784, 1.9188, 1.1679, 0],
  ['QB3', 0.38, 1.0059, 1.4509, 1.0129, 0],
  ['B4', 0.382683, 1.0, 1.414214, 1.0, 0],
  ['C4', 0.429, 0.8973, 0.9381, 0.8202, 0.01],
  ['C4', 0.4573, 0.842, 0.7649, 0.7449, 0.05],
  ['C4', 0.4762, 0.8106, 0.6822, 0.7058, 0.1],
  ['C4', 0.485, 0.7974, 0.6502, 0.6899, 0.13],
  ['C4', 0.5127, 0.7614, 0.5703, 0.6482, 0.25],
  ['C4', 0.5556, 0.7189, 0.4879, 0.6013, 0.5],
  ['C4', 0.5631, 0.7128, 0.477, 0.5948, 0.55],
  ['C4', 0.6241, 0.6736, 0.4117, 0.5536, 1],
  ['C4', 0.6881, 0.6461, 0.3705, 0.5256, 1.52],
];

/** type, f3/fs, h, Vb/Vas, Qt as printed, to three figures. */
const THIELE_TABLE: readonly (readonly [string, number, number, number, number])[] = [
  ['QB3', 2.68, 2.0, 0.0954, 0.18],
  ['QB3', 2.28, 1.73, 0.1337, 0.209],
  ['QB3', 1.77, 1.42, 0.2242, 0.259],
  ['QB3', 1.45, 1.23, 0.339, 0.303],
  ['B4', 1.0, 1.0, 0.7072, 0.383],
  ['C4', 0.867, 0.927, 0.9479, 0.415],
  ['C4', 0.729, 0.829, 1.372, 0.446],
  ['C4', 0.641, 0.757, 1.79, 0.518],
  ['C4', 0.6, 0.716, 2.062, 0.557],
  ['C4', 0.52, 0.638, 2.6, 0.625],
];

function speaker(q: number, h: number, alpha: number): ReturnType<typeof polynomialResponse> {
  const { f0Hz, polynomial } = ventedBox(1, q, alpha, h);
  return polynomialResponse(f0Hz, polynomial);
}

describe('lossless vented box, after Thiele and Small', () => {
  it.each(ALIGNMENTS)(
    'finds f3/fs of %s with Qt %d, h %d, α %d: %d',
    (type, q, h, alpha, ratio) => {
      const found = crossingHz(speaker(q, h, alpha), HALF_POWER_DB, 100, 0.01);
      expectClose(
        found,
        ratio,
        type === 'C4' ? 0.012 * ratio : 0.002,
        'C4 counts f3 from the ripple',
      );
    },
  );

  it.each(ALIGNMENTS.filter(([type]) => type === 'C4'))(
    'ripples above the cutoff of %s with Qt %d by the design value',
    (_type, q, h, alpha, ratio, rippleDb) => {
      const response = speaker(q, h, alpha);
      const levels = Array.from(
        { length: 400 },
        (_, i) => 10 * Math.log10(squared(response(ratio * 1.02 * 30 ** (i / 399)))),
      );
      expectClose(Math.max(...levels), rippleDb, 0.02, 'alignment printed to four figures');
    },
  );

  it.each(THIELE_TABLE)('agrees with the printed %s: f3/fs %d', (_type, ratio, h, volume, q) => {
    const found = crossingHz(speaker(q, h, 1 / volume), HALF_POWER_DB, 100, 0.01);
    expectClose(found, ratio, 0.02 * ratio, 'table printed to two or three figures');
  });

  it('has the Butterworth alignment at t = 0', () => {
    const b4 = speaker(Math.sin(Math.PI / 8), 1, Math.SQRT2);
    for (const x of [0.3, 0.7, 1, 1.4, 3]) {
      const onLine = squared(ventedResponse(1, 0)(x));
      expectClose(onLine, squared(b4(x)), 1e-12);
      expectClose(onLine, x ** 8 / (1 + x ** 8), 1e-12);
    }
  });

  it.each([
    [-1, 0.775],
    [-0.5, 0.888],
    [0, 1.0],
    [0.5, 1.455],
    [1, 2.009],
  ])('has on the line of alignments at t = %d an −3 dB point of %d f0', (t, ratio) => {
    expectClose(crossingHz(ventedResponse(1, t), 3, 100, 0.01), ratio, 0.001);
  });

  it.each([0.25, 0.5, 1])('is a quasi-third-order response at t = %d', (t) => {
    for (const x of [0.5, 1, 1.5, 2, 4]) {
      const power = squared(ventedResponse(1, t)(x));
      expectClose(power, x ** 8 / (x ** 8 + 4 * t * x ** 6 + 1), 1e-9);
    }
  });
});
