import { describe, expect, it } from 'vitest';
import { abilitiesOf } from '../../../src/proposal/abilities';
import { pairReadings } from '../../../src/proposal/channel-measurement';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { ledgerGround, ledgerLines, type LedgerChoice } from '../../../src/proposal/ledger';
import { changed, ledgerMends } from '../../../src/proposal/ledger-mends';
import { proposeLedger } from '../../../src/proposal/propose-ledger';
import { rolloffCurve } from '../../../src/proposal/rolloff-curve';
import { expectClose } from '../../close';
import { ledgerGrid } from '../../../dsp/bass/ledger-curves';
import { layoutNamed, readingsOf, rolloffAt } from './sample-readings';
import { sampleSheet } from './sample-sheet';

const sheet = sampleSheet({
  subLowPass: { stepsHz: [60, 80, 120, 250], notBelowHighestBedCrossover: false },
});
const abilities = abilitiesOf(defaultProcessorSteps, sheet);
const deep = { rolloff: rolloffAt(20, 18) };
const small = { rolloff: rolloffAt(110, 95) };

function groundOf(layout: string, known: Parameters<typeof readingsOf>[1]) {
  return ledgerGround(pairReadings(readingsOf(layout, known), layoutNamed(layout)), abilities);
}

const open: LedgerChoice = {
  crossoverHz: { fronts: 120, centre: 120 },
  subLowPassHz: null,
  lowCutHz: null,
};

describe('the curve of a roll-off', () => {
  it('passes −3, −6 and −10 dB where the reading says, and is flat above', () => {
    // f10 at 0.8 · 60 Hz = 48 Hz; grid 20 · 2^(n/24) Hz, straight in dB over log f.
    const curve = rolloffCurve(rolloffAt(80, 60));
    const dbAt = (hz: number): number => {
      const grid = ledgerGrid();
      const k = grid.findIndex((f) => f >= hz) - 1;
      const [low, high] = [grid[k] ?? 1, grid[k + 1] ?? 1];
      const along = Math.log(hz / low) / Math.log(high / low);
      const [a, b] = [10 * Math.log10(curve[k] ?? 1), 10 * Math.log10(curve[k + 1] ?? 1)];
      return a + along * (b - a);
    };
    expectClose([dbAt(80), dbAt(60), dbAt(48)], [-3, -6, -10], 0.15, 'bends between grid lines');
    expectClose([dbAt(140), dbAt(290)], [0, 0], 1e-9);
    // A closed box falls on by 12 dB an octave.
    expectClose(dbAt(24), -22, 0.15);
  });
});

describe('mends', () => {
  const ground = groundOf('3.1', { FL: small, FR: small, FC: small, 'Sub 1': deep });

  it('name the low-pass that cuts the subs off under the crossover, and its gain is the ledger’s', () => {
    const choice = { ...open, subLowPassHz: 60 };
    const [best] = ledgerMends(ground, choice, 'FC', []);
    expect(best?.change.setting).toBe('sub low-pass');
    const lossOf = (one: LedgerChoice): number =>
      ledgerLines(ground, one).find(({ name }) => name === 'FC')?.lossDb ?? NaN;
    const after = best ? lossOf(changed(choice, best.change)) : NaN;
    expectClose(best?.gainDb, lossOf(choice) - after, 1e-9);
    expect(best?.sentence).toMatch(/^A sub low-pass of 250 Hz brings back \d\.\d dB\.$/);
  });

  it('name a crossover that lies below what the speaker plays', () => {
    const choice = { ...open, crossoverHz: { fronts: 40, centre: 120 } };
    const line = proposeLedger(ground, choice, []).lines.find(({ channel }) => channel === 'FL');
    expect(line?.why?.sentence).toContain('the crossover lies lower than the speaker reaches');
    expect(line?.mends[0]?.change).toMatchObject({ setting: 'crossover', group: 'fronts' });
    expect(proposeLedger(ground, choice, null).lines[0]?.mends).toEqual([]);
  });

  it('name a low cut that takes what the sub could play', () => {
    const choice = { ...open, lowCutHz: 30 };
    const changes = ledgerMends(ground, choice, 'LFE', []).map(({ change }) => change);
    expect(changes).toContainEqual({ setting: 'low cut', hz: null });
  });

  it('give full range only to groups that may have it', () => {
    const fronts = groundOf('2.1', { FL: deep, FR: deep, 'Sub 1': { rolloff: rolloffAt(60, 50) } });
    const choice = { ...open, crossoverHz: { fronts: 120 } };
    const settings = (may: readonly 'fronts'[]) =>
      ledgerMends(fronts, choice, 'FL', may).map(({ change }) => change);
    expect(settings(['fronts'])).toContainEqual({
      setting: 'crossover',
      group: 'fronts',
      hz: null,
    });
    for (const change of settings([])) expect(change).not.toMatchObject({ hz: null });
  });
});

describe('the ledger', () => {
  it('has no line for a speaker of which nothing is known, and none at all without a sub’s', () => {
    const some = groundOf('3.1', { FC: { rolloff: null }, 'Sub 1': deep });
    const told = proposeLedger(some, open, []);
    expect(told.lines.map(({ channel }) => channel)).toEqual(['FL', 'FR', 'LFE']);
    expect(told.unknown).toEqual(['FC']);
    expect(proposeLedger(groundOf('3.1', {}), open, []).lines).toEqual([]);
  });

  it('gives the bass of others to the fronts where there is no sub', () => {
    const ground = groundOf('3.0', { FL: deep, FR: deep, FC: small });
    const choice = { ...open, crossoverHz: { fronts: null, centre: 120 } };
    const lines = proposeLedger(ground, choice, []).lines;
    expect(lines.map(({ channel, carrier }) => [channel, carrier])).toEqual([
      ['FL', 'own'],
      ['FR', 'own'],
      ['FC', 'fronts'],
      ['LFE', 'fronts'],
    ]);
  });
});
