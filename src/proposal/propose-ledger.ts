import { msg, str } from '@lit/localize';
import type { LedgerLine } from '../../dsp/bass/bass-ledger';
import type { LedgerSetting } from '../../dsp/bass/ledger-opener';
import type { ChannelLabel, GroupId } from '../system/channel';
import { ledgerLines, type LedgerChoice, type LedgerGround } from './ledger';
import { ledgerMends } from './ledger-mends';
import type { LedgerLineProposal, LedgerProposal } from './ledger-proposal';
import { sayHz, sayLossDb } from './phrases';
import { groundsOf, type Reason } from './reason';

/** A loss from here on is explained, dB. */
const toldDb = 0.5;
/** So far above what no setting brings back mends are sought, dB. */
const mendableDb = 0.2;

/**
 * The bass ledger of settings, with why something is lost and what would bring it back. `canBeFull`:
 * groups that may run full range; null seeks no mends.
 */
export function proposeLedger(
  ground: LedgerGround,
  choice: LedgerChoice,
  canBeFull: readonly GroupId[] | null,
): LedgerProposal {
  const lines = ledgerLines(ground, choice).map((line): LedgerLineProposal => {
    const { name, lossDb, leastLossDb, gaps } = line;
    const own = ground.channels.find(({ label }) => label === name);
    const crossoverHz = own ? (choice.crossoverHz[own.group] ?? null) : null;
    const opened = gaps.some(({ opens }) => opens !== null);
    const mendable = canBeFull !== null && (opened || lossDb - leastLossDb > mendableDb);
    return {
      channel: own?.label ?? 'LFE',
      carrier: carrierOf(ground, own !== undefined, crossoverHz),
      lossDb,
      leastLossDb,
      gaps,
      why: lossDb > toldDb ? whyLost(line, own?.label ?? null, crossoverHz, ground) : null,
      mends: mendable ? ledgerMends(ground, choice, name, canBeFull) : [],
    };
  });
  return { lines, unknown: ground.unknown };
}

function carrierOf(
  { hasSubs, fronts }: LedgerGround,
  isSpeaker: boolean,
  crossoverHz: number | null,
): LedgerLineProposal['carrier'] {
  if (isSpeaker && crossoverHz === null) return 'own';
  if (hasSubs) return 'subs';
  return fronts.length > 0 ? 'fronts' : null;
}

const openers: Readonly<Record<LedgerSetting, string>> = {
  get 'sub low-pass'() {
    return msg('the sub low-pass lies too low');
  },
  get 'low cut'() {
    return msg('the low cut lies too high');
  },
  get 'crossover too low'() {
    return msg('the crossover lies lower than the speaker reaches');
  },
  get 'crossover too high'() {
    return msg('the crossover lies higher than the subs reach');
  },
  get 'full range'() {
    return msg('it runs full range, so the subs do not help');
  },
};

function whyLost(
  { name, lossDb, leastLossDb, gaps }: LedgerLine,
  label: ChannelLabel | null,
  crossoverHz: number | null,
  { hasSubs }: LedgerGround,
): Reason {
  const widest = gaps.reduce<(typeof gaps)[number] | null>(
    (most, gap) =>
      most === null || gap.highHz / gap.lowHz > most.highHz / most.lowHz ? gap : most,
    null,
  );
  const opened = widest?.opens ?? null;
  const lowEnd = msg(
    str`that is the lower end of what stands in the room${hasSubs ? '' : msg(', where there is no sub')}`,
  );
  const reason = widest
    ? msg(
        str`from ${sayHz(widest.lowHz)} to ${sayHz(widest.highHz)} it reaches nobody, because ${opened === null ? lowEnd : openers[opened]}`,
      )
    : crossoverHz !== null && lossDb - leastLossDb > mendableDb
      ? msg(
          str`nothing is lost for good, but about ${sayHz(crossoverHz)} its speaker and the ${hasSubs ? msg('subs') : msg('fronts')} that share it are falling off already`,
        )
      : lowEnd;
  return {
    sentence: msg(str`${name} loses ${sayLossDb(lossDb)} of its bass: ${reason}.`),
    grounds: label ? groundsOf([label], 'rolloff') : [],
  };
}
