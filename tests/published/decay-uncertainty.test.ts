// ISO 3382-2:2008, 8.1: σ(T20) = 0.88·T·√((1 + 1.90/n)/(N·B·T)), σ(T30) = 0.55·T·√((1 + 1.52/n)/(N·B·T));
// constants from memory, for many decays (n → ∞) at one place (N = 1).
// ISO 3382-1:2009, 5.3: T20 from −5 to −25 dB, T30 from −5 to −35 dB.
import { it } from 'vitest';
import { rangeLimits } from '../../dsp/decay/decay-time';
import { fitDecay } from '../../dsp/decay/fit-decay';
import { expectClose } from '../close';

it.each([
  ['T20', 0.88],
  ['T30', 0.55],
] as const)('the deviation of %s without noise is %d/√(BT)', (range, constant) => {
  const [seconds, widthHz] = [0.7, 355];
  const stepSeconds = 0.0005;
  const curve = {
    stepSeconds,
    remaining: Float64Array.from({ length: 2400 }, (_, n) => {
      return 10 ** ((-6 * n * stepSeconds) / seconds);
    }),
    kneeSeconds: 1.2,
    noise: 0,
    noiseError: 0,
    added: 0,
    lateSeconds: seconds,
    rangeDb: 100,
    endedBy: 'noise',
  } as const;
  const { topDb, bottomDb } = rangeLimits[range];
  const deviation = fitDecay(curve, topDb, bottomDb, widthHz)?.deviation ?? 0;
  expectClose(deviation * Math.sqrt(widthHz * seconds), constant, 0.006);
});
