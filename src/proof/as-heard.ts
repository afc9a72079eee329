import { throughPath } from '../../dsp/bass/electrical-path';
import type { Transfer } from '../../dsp/bass/transfer';
import { fitPath, type PathFit } from '../../dsp/comparison/fit-path';
import type { FilterSpec } from '../../dsp/filter/analogue';
import { arrivalOf } from './arrival-of';
import { crossoverOf, expectThrough, highPassOf } from './expect-bass';
import type { ProofCase, ProvedChannel } from './proof-case';

/** The sign is looked for from 120 Hz or twice the crossover on, at the time of the arrival. */
const lowestHz = 120;
const highestHz = 480;
const mostSeconds = 0.2e-3;

/** A main through filters as it should sound, at the time and level it was heard at. */
export function expectAsHeard(
  proof: ProofCase,
  main: ProvedChannel,
  filters: readonly FilterSpec[],
): Transfer | null {
  const expected = expectThrough(proof, main, filters);
  if (!expected) return null;
  const { channel, before, after } = main;
  const { typed, volumeDb, referenceLateSeconds, metresPerSecond, hz } = proof;
  const late = arrivalOf(main, proof, metresPerSecond)?.late ?? null;
  const isReference = channel.label === proof.after.reference;
  const louder =
    typeof before?.levelDb === 'number' && typeof after?.levelDb === 'number'
      ? after.levelDb - before.levelDb - (typed.trimDb[channel.label] ?? 0) - volumeDb
      : 0;
  const path = {
    filters: [],
    delaySeconds: late === null || isReference ? 0 : late + referenceLateSeconds,
    gainDb: louder,
  };
  return throughPath([expected], path, hz)[0] ?? null;
}

/**
 * A main beside what it should sound like at the time of its arrival, so that only its sign is open;
 * null without bass before and after.
 */
export function fitSign(proof: ProofCase, main: ProvedChannel): PathFit | null {
  const crossoverHz = crossoverOf(proof, main);
  const filters = crossoverHz === null ? [] : [highPassOf(proof.typed, crossoverHz)];
  const expected = expectAsHeard(proof, main, filters);
  if (!expected || !main.bassAfter) return null;
  const from = Math.min(2 * lowestHz, Math.max(lowestHz, 2 * (crossoverHz ?? 0)));
  return fitPath(main.bassAfter, expected, proof.hz, [from, highestHz], mostSeconds);
}
