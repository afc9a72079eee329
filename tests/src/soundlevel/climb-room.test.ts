import { describe, expect, it } from 'vitest';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { expectClose } from '../../close';
import { calibration, climb, resultOf } from './climb-on';

const delays = [1499, 1777, 2083, 2371, 2693, 3001];
const decaySeconds = 0.5;
const rate = 48_000;

/** A reverberant room of six delays that feed each other, and a 16-bit converter behind it. */
function room(): (x: number) => number {
  const lines = delays.map((length) => ({
    past: new Float64Array(length),
    gain: 10 ** ((-3 * length) / rate / decaySeconds),
    at: 0,
  }));
  return (x) => {
    const outs = lines.map(({ past, gain, at }) => gain * (past[at] ?? 0));
    const mixed = (2 * outs.reduce((sum, out) => sum + out, 0)) / outs.length;
    for (const [i, line] of lines.entries()) {
      line.past[line.at] = x + (outs[i] ?? 0) - mixed;
      line.at = (line.at + 1) % line.past.length;
    }
    const heard = x + 0.5 * outs.reduce((sum, out) => sum + out, 0);
    return Math.round(heard * 32_768) / 32_768;
  };
}

describe('climbLevel in a reverberant room', () => {
  it('finds a gain at which a sweep of a take is as loud as its noise, and no louder', async () => {
    const climbed = await climb(
      { gainDb: -20, noiseDb: -75, process: room() },
      { marginDb: 30 },
      { soundLevel: { ...calibration, offsetDb: 110 } },
    );
    const { end, gainDb, linearity } = resultOf(climbed);
    expect([end, linearity?.passes]).toEqual(['margin', true]);
    const soundDb = Math.max(...climbed.states.map((state) => state.soundLevel?.db ?? 0)) - 110;

    const hear = room();
    const sweep = sweepSignal(synchronisedSweep(10, 20_000, 2 ** 17, rate));
    let energy = 0;
    let peak = 0;
    for (const x of sweep) {
      const heard = hear(x * 10 ** ((gainDb - 12 - 20) / 20));
      energy += heard * heard;
      peak = Math.max(peak, Math.abs(heard));
    }
    const sweepDb = 10 * Math.log10(energy / sweep.length);
    expectClose(sweepDb, soundDb, 1.5, 'the sweep is not weighted, and reaches lower');
    expect(20 * Math.log10(peak)).toBeLessThan(-12);
  });
});
