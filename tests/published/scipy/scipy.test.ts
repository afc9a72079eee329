// Source: SciPy. reference.py (beside) does the same work and made reference.vectors.json; where
// SciPy is installed it is asked again, live, with larger cases.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { expectClose } from '../../close';
import { answerCase, type Case, type Task } from './cases';
import vectors from './reference.vectors.json';

/** Closeness wanted of each task, re the largest number of SciPy's answer. */
const tolerances: Record<Task, number> = {
  'real spectrum': 1e-13,
  'complex spectrum': 1e-13,
  convolution: 1e-13,
  sweep: 1e-9,
  mark: 1e-9,
  deconvolution: 1e-9,
  'analogue response': 1e-12,
  'digital response': 1e-9,
  filtering: 1e-9,
  smoothing: 1e-12,
  'pink mean': 1e-5, // SciPy's side adds up 400 000 steps
  'octave response': 1e-12,
  'octave decay': 1e-3, // SciPy's filter is digital, its skirts end at half the sample rate
  'group delay': 1e-9,
};

function expectAgreement(given: Case, answer: ArrayLike<number>): void {
  const scale = Array.from(answer).reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  expect(scale).toBeGreaterThan(0);
  expectClose([...answerCase(given)], Array.from(answer), tolerances[given.task] * scale);
}

describe('stored answers of SciPy', () => {
  const stored = vectors.cases as unknown as readonly (Case & { readonly answer: number[] })[];

  it('cover every task', () => {
    expect(new Set(stored.map((each) => each.task))).toEqual(new Set(Object.keys(tolerances)));
  });

  it.each(stored.map((each, n) => ({ n, ...each })))('agree: $n $task', ({ answer, ...given }) => {
    expectAgreement(given, answer);
  });
});

const script = fileURLToPath(new URL('./reference.py', import.meta.url));
const python = ['python3', '/usr/bin/python3'].find(
  (name) => spawnSync(name, ['-c', 'import scipy.signal, scipy.fft']).status === 0,
);

describe('SciPy asked live (skipped where it is not installed)', () => {
  it.skipIf(python === undefined)('agrees on larger cases', () => {
    const cases = largeCases();
    const run = spawnSync(python ?? '', [script, 'answer'], {
      input: JSON.stringify(cases),
      maxBuffer: 2 ** 28,
      encoding: 'utf8',
    });
    expect(run.stderr).toBe('');
    const answers = JSON.parse(run.stdout) as number[][];
    expect(answers).toHaveLength(cases.length);
    cases.forEach((given, n) => {
      expectAgreement(given, answers[n] ?? []);
    });
  });
});

function largeCases(): Case[] {
  const next = gaussian(seededRandom(12));
  const noise = (length: number): number[] => Array.from({ length }, next);
  const sweep = synchronisedSweep(20, 20_000, 2 ** 14, 48_000);
  const captured = [...new Float64Array(3000), ...sweepSignal(sweep), ...new Float64Array(3000)];
  const echo = captured.map((v, n) => v + 0.5 * (captured[n - 777] ?? 0) + 0.01 * next());
  const power = noise(2 ** 12).map((v) => v * v);
  return [
    { task: 'real spectrum', input: { signal: noise(30_000), size: 2 ** 15 } },
    { task: 'real spectrum', input: { signal: noise(2 ** 14), size: 2 ** 14 } },
    { task: 'complex spectrum', input: { signal: noise(2 ** 14) } },
    { task: 'convolution', input: { a: noise(3000), b: noise(1000) } },
    { task: 'sweep', input: sweep },
    {
      task: 'deconvolution',
      input: { captured: echo, startIndex: 3000, sweep, preSamples: 2400, lengthSamples: 9600 },
    },
    {
      task: 'smoothing',
      input: { power, hzPerBin: 5.86, hz: [25, 100, 3000, 20_000], fraction: 24 },
    },
  ];
}
