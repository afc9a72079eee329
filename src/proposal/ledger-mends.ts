import { msg, str } from '@lit/localize';
import { groupWord } from '../system/group-word';
import type { GroupId } from '../system/channel';
import { stepsFor } from './abilities';
import { ledgerLines, type LedgerChoice, type LedgerGround } from './ledger';
import type { LedgerMend } from './ledger-proposal';
import { sayHz, sayLossDb } from './phrases';

/** A change that brings back less is not worth typing, dB. */
const leastGainDb = 0.2;
/** Nor one that costs another speaker of the group more than this, dB. */
const mostCostDb = 0.1;

type Change = LedgerMend['change'];

/**
 * The best change of each setting for one channel of a ledger, best first. `canBeFull`: groups that
 * may run full range.
 */
export function ledgerMends(
  ground: LedgerGround,
  choice: LedgerChoice,
  name: string,
  canBeFull: readonly GroupId[],
): LedgerMend[] {
  const { abilities, channels } = ground;
  const group = channels.find(({ label }) => label === name)?.group ?? null;
  const mates = channels.filter((one) => one.group === group).map(({ label }) => label);
  const names = group === null ? [name] : mates;
  const before = lossesOf(ground, choice, names);
  const highest = abilities.notBelowHighestBedCrossover ? choice.subLowPassHz : null;
  const bedHz = Object.entries(choice.crossoverHz).flatMap(([one, hz]) =>
    one.endsWith('heights') ? [] : (hz ?? []),
  );
  const lowest = abilities.notBelowHighestBedCrossover ? Math.max(0, ...bedHz) : 0;
  const crossovers =
    group === null || abilities.oneCrossover
      ? []
      : [
          ...stepsFor(abilities, group).filter(
            (hz) => highest === null || group.endsWith('heights') || hz <= highest,
          ),
          ...(canBeFull.includes(group) ? [null] : []),
        ].map((hz): Change => ({ setting: 'crossover', group, hz }));
  const lowPasses =
    choice.subLowPassHz === null
      ? []
      : abilities.subLowPassHz
          .filter((hz) => hz >= lowest)
          .map((hz): Change => ({ setting: 'sub low-pass', hz }));
  const lowCuts =
    choice.lowCutHz === null
      ? []
      : [null, ...abilities.lowCutHz].map((hz): Change => ({ setting: 'low cut', hz }));
  return [crossovers, lowPasses, lowCuts]
    .flatMap((changes) => bestOf(changes, ground, choice, name, before) ?? [])
    .sort((a, b) => b.gainDb - a.gainDb);
}

function bestOf(
  changes: readonly Change[],
  ground: LedgerGround,
  choice: LedgerChoice,
  name: string,
  before: ReadonlyMap<string, number>,
): LedgerMend | null {
  let best: LedgerMend | null = null;
  for (const change of changes) {
    const after = lossesOf(ground, changed(choice, change), [...before.keys()]);
    const gainOf = (one: string): number => (before.get(one) ?? 0) - (after.get(one) ?? 0);
    const gainDb = gainOf(name);
    const costs = [...before.keys()].some((one) => gainOf(one) < -mostCostDb);
    if (costs || gainDb < Math.max(leastGainDb, (best?.gainDb ?? 0) + 1e-9)) continue;
    best = { change, gainDb, sentence: sayChange(change, gainDb) };
  }
  return best;
}

/** The settings after one change. */
export function changed(choice: LedgerChoice, change: Change): LedgerChoice {
  switch (change.setting) {
    case 'crossover':
      return { ...choice, crossoverHz: { ...choice.crossoverHz, [change.group]: change.hz } };
    case 'sub low-pass':
      return { ...choice, subLowPassHz: change.hz };
    case 'low cut':
      return { ...choice, lowCutHz: change.hz };
  }
}

function lossesOf(
  ground: LedgerGround,
  choice: LedgerChoice,
  names: readonly string[],
): Map<string, number> {
  return new Map(ledgerLines(ground, choice, names).map(({ name, lossDb }) => [name, lossDb]));
}

function sayChange(change: Change, gainDb: number): string {
  const back = msg(str`brings back ${sayLossDb(gainDb)}`);
  switch (change.setting) {
    case 'crossover':
      return change.hz === null
        ? msg(str`Full range for the ${groupWord(change.group)} ${back}.`)
        : msg(str`A crossover of ${sayHz(change.hz)} for the ${groupWord(change.group)} ${back}.`);
    case 'sub low-pass':
      return msg(str`A sub low-pass of ${sayHz(change.hz)} ${back}.`);
    case 'low cut':
      return change.hz === null
        ? msg(str`Without the low cut the subs ${back.replace('brings', 'bring')}.`)
        : msg(str`A low cut of ${sayHz(change.hz)} ${back}.`);
  }
}
