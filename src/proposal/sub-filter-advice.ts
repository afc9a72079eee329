import { msg, str } from '@lit/localize';
import { chooseLowCut, chooseSubLowPass } from '../../dsp/bass/sub-filters';
import type { Channel, GroupId } from '../system/channel';
import { lowCutFilter, type Abilities } from './abilities';
import type { ChannelMeasurement } from './channel-measurement';
import { filterOf } from '../reading/take-out-filter';
import { sayHz, sayLossDb, startSentence } from './phrases';
import { groundsOf, type Reason } from './reason';
import { lowestOf } from './speaker-limits';
import type { SubFilterProposal } from './subs-proposal';

/** A low-pass that takes more at a crossover is no free choice, dB. */
const mostCostDb = 0.5;

const plain = (sentence: string): Reason => ({ sentence, grounds: [] });
const off = (reason: Reason): SubFilterProposal => ({ hz: null, costDb: 0, reasons: [reason] });

/** A crossover in force, with who has it. */
export interface GroupCrossover {
  readonly group: GroupId;
  readonly kind: Channel['kind'];
  readonly hz: number;
}

/** The sub low-pass that opens no gap under the crossovers in force. */
export function adviseSubLowPass(
  crossovers: readonly GroupCrossover[],
  { subLowPassHz, filters }: Abilities,
): SubFilterProposal {
  if (subLowPassHz.length === 0) {
    return off(
      plain(msg('No sheet names a low-pass of the subs: switch it off where there is one.')),
    );
  }
  const hzOf = (kind?: Channel['kind']): number[] =>
    crossovers.flatMap((one) => (kind === undefined || one.kind === kind ? [one.hz] : []));
  const bed = Math.max(0, ...hzOf('bed'));
  const heights = Math.max(0, ...hzOf('height'));
  const { family, order } = filterOf(filters.subLowPass, 'low-pass', 100);
  const choice = chooseSubLowPass({
    crossoversHz: hzOf(),
    bedCrossoversHz: hzOf('bed'),
    stepsHz: subLowPassHz,
    canBeOff: false,
    shape: { family, order },
  });
  const { hz, costDb, belowBed } = choice;
  const at = sayHz(hz ?? 0);
  return {
    hz,
    costDb,
    reasons: [
      plain(
        belowBed
          ? msg(
              str`${at} is the highest step and lies below the highest crossover of the bed (${sayHz(bed)}): what lies between reaches nobody.`,
            )
          : costDb > mostCostDb
            ? msg(
                str`${at} is the highest step, and takes ${sayLossDb(costDb)} at the highest crossover.`,
              )
            : msg(
                str`${at} is the lowest step that lies above the highest crossover of the bed (${sayHz(bed)}) and the 120 Hz of LFE, and takes ${sayLossDb(costDb)} at the highest crossover.`,
              ),
      ),
      ...(heights > bed && heights > (hz ?? 0)
        ? [
            plain(
              msg(
                str`The heights cross over at ${sayHz(heights)}, above it: part of their bass between ${at} and ${sayHz(heights)} is lost.`,
              ),
            ),
          ]
        : []),
    ],
  };
}

/**
 * The low cut of the subs: off where it protects nothing, because the box is closed or distortion
 * stays under 10 % down to the lowest that was read; else the highest step that costs the deepest
 * sub next to nothing.
 */
export function adviseLowCut(
  subs: readonly ChannelMeasurement[],
  { lowCutHz }: Abilities,
): SubFilterProposal {
  if (lowCutHz.length === 0)
    return off(plain(msg('The processor has no low cut, as far as is known.')));
  const known = subs.flatMap(({ channel, reading }) =>
    reading?.rolloff ? [{ channel, rolloff: reading.rolloff }] : [],
  );
  const [first] = known;
  if (!first) {
    return off(
      plain(msg('Off: no roll-off of a sub could be read, and a low cut in the dark costs bass.')),
    );
  }
  const clean = subs.map((sub) => lowestOf(sub, 10));
  if (clean.every((found) => found?.kind === 'not reached')) {
    return off({
      sentence: msg(
        'Off, as it would protect nothing: every sub stays under 10 % distortion down to the lowest that was read, at the level it was played.',
      ),
      grounds: groundsOf(
        subs.map(({ channel }) => channel.label),
        'distortion',
      ),
    });
  }
  const deepest = known.reduce((low, one) => (lowOf(one) < lowOf(low) ? one : low), first);
  const box =
    known.find(({ rolloff }) => rolloff.box.kind !== 'closed')?.rolloff.box.kind ?? 'closed';
  const { family, order } = lowCutFilter(20);
  const { median } = deepest.rolloff.f3Hz;
  const choice = chooseLowCut({
    box,
    f3Hz: { median, low: Math.min(lowOf(deepest), median) },
    stepsHz: lowCutHz,
    shape: { family, order },
  });
  const { label, name } = deepest.channel;
  const f3 = msg(str`${name} is 3 dB down at ${sayHz(median)}`);
  const at = sayHz(choice.hz ?? 0);
  const cost = msg(str`${at} takes ${sayLossDb(choice.costDb)} there`);
  const sentences = {
    closed: msg('Off: the air in a closed box holds the cone, so a low cut would only cost bass.'),
    vented: msg(str`${f3} and vented: below its tuning nothing holds the cone. ${cost}.`),
    'taken as vented': msg(
      str`${f3}; whether its box is vented cannot be told, so it is taken as vented. ${cost}.`,
    ),
    'no step': msg(str`Off: ${f3}, and every step of the low cut would take bass it can play.`),
  } as const;
  return {
    hz: choice.hz,
    costDb: choice.costDb,
    reasons: [
      { sentence: startSentence(sentences[choice.why]), grounds: groundsOf([label], 'rolloff') },
    ],
  };
}

function lowOf({
  rolloff,
}: {
  readonly rolloff: { readonly f3Hz: { readonly interval: readonly [number, number] } };
}): number {
  return rolloff.f3Hz.interval[0];
}
