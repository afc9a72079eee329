import { describe, expect, it } from 'vitest';
import { bassGrid, bassTransfer } from '../../../dsp/bass/transfer';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const hz = bassGrid();

describe('bassTransfer', () => {
  it('of a unit sample is a turn of the phase by its delay', () => {
    for (const at of [480, 500, 777, 3000, 20000]) {
      const samples = new Float64Array(24000);
      samples[at] = 1;
      const { re, im } = bassTransfer({ samples, sampleRate: 48000, zeroIndex: 480 }, hz);
      const delay = (at - 480) / 48000;
      const near = 'what the band limit rings to before the first sample is cut';
      expectClose(
        re,
        hz.map((f) => Math.cos(2 * Math.PI * f * delay)),
        1e-4,
        near,
      );
      expectClose(
        im,
        hz.map((f) => -Math.sin(2 * Math.PI * f * delay)),
        1e-4,
        near,
      );
    }
  });

  it('of a falling exponential is its closed form at low and at high rates', () => {
    for (const [sampleRate, fall] of [
      [48000, 0.999],
      [44100, 0.9995],
      [2000, 0.98],
    ] as const) {
      const samples = Float64Array.from({ length: sampleRate }, (_, n) => fall ** n);
      const { re, im } = bassTransfer({ samples, sampleRate, zeroIndex: 0 }, hz);
      const expected = [...hz].map((f) => {
        const turn = (2 * Math.PI * f) / sampleRate;
        const [a, b] = [1 - fall * Math.cos(turn), fall * Math.sin(turn)];
        return [a / (a * a + b * b), -b / (a * a + b * b)];
      });
      const scale = 1 / (1 - fall);
      expectClose(
        [...hz].map((_, k) => [(re[k] ?? 0) / scale, (im[k] ?? 0) / scale]),
        expected.map(([a = 0, b = 0]) => [a / scale, b / scale]),
        1e-4,
        'the band limit costs less than this of the peak',
      );
    }
  });

  it('takes a reference out as a turn of the phase', () => {
    const random = seededRandom(4);
    const samples = Float64Array.from({ length: 4800 }, () => random() - 0.5);
    const ir = { samples, sampleRate: 48000, zeroIndex: 100 };
    const moved = bassTransfer(ir, hz, 0.01);
    const same = bassTransfer({ ...ir, zeroIndex: 580 }, hz);
    expectClose(moved, same, 1e-9);
  });

  it.each([
    [new Float64Array([20, 20])],
    [new Float64Array([0, 20])],
    [new Float64Array([20])],
    [new Float64Array([20, 600])],
    [new Float64Array([NaN, 20])],
  ])('refuses the frequencies %o at 2000 Hz', (grid) => {
    const ir = { samples: new Float64Array(10), sampleRate: 2000, zeroIndex: 0 };
    expect(() => bassTransfer(ir, grid)).toThrow(RangeError);
  });
});
