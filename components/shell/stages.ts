import { msg, str } from '@lit/localize';
import { mostInverted } from '../../src/proposal/most-inverted';
import { sayList } from '../../src/proposal/phrases';
import type { Readings } from '../../src/reading/reading';
import type { BenchState } from '../../src/session/bench';
import { isOldProof } from '../../src/session/derive-proof';
import type { Layout } from '../../src/system/channel';
import { patchStanding } from '../patch/patch-standing';

export type StageId = 'plan' | 'patch' | 'probe' | 'propose' | 'prove';

export const stageNames: Readonly<Record<StageId, string>> = {
  get plan() {
    return msg('Plan');
  },
  get patch() {
    return msg('Patch');
  },
  get probe() {
    return msg('Probe');
  },
  get propose() {
    return msg('Propose');
  },
  get prove() {
    return msg('Prove');
  },
};

export const stageOrder: readonly StageId[] = ['plan', 'patch', 'probe', 'propose', 'prove'];

export interface StageStanding {
  readonly id: StageId;
  readonly number: number;
  readonly done: boolean;
  /** What the next stage must wait for; null when it need not wait. */
  readonly missing: string | null;
}

/** The stage a location hash names, also with a sheet of it: #probe/level. Plan when it names none. */
export function stageFromHash(hash: string): StageId {
  const [name] = hash.replace(/^#/, '').split('/');
  return stageOrder.find((id) => id === name) ?? 'plan';
}

/** Where each stage stands: what is done, and what is missing before the next can be trusted. */
export function stageStandings(state: BenchState): StageStanding[] {
  const standing: Record<StageId, Omit<StageStanding, 'id' | 'number'>> = {
    plan: standingOfPlan(state),
    patch: patchStanding(state),
    probe: standingOfProbe(state),
    propose: standingOfPropose(state),
    prove: standingOfProve(state),
  };
  return stageOrder.map((id, index) => ({ id, number: index + 1, ...standing[id] }));
}

type Standing = Omit<StageStanding, 'id' | 'number'>;

function standingOfPlan(state: BenchState): Standing {
  const probed = state.document.takes.some((take) => take.schedule.layout === state.layout.name);
  return {
    done: probed,
    missing: msg(
      str`The plan says ${state.layout.title}. Go on when that is what stands in the room, and no speaker more.`,
    ),
  };
}

function standingOfProbe(state: BenchState): Standing {
  const readings = state.readings;
  if (!readings)
    return { done: false, missing: msg('Nothing can be proposed before a take is read.') };
  if (readings.layout !== state.layout.name) {
    return {
      done: false,
      missing: msg(
        str`The newest take was made for ${readings.layout}; the plan now says ${state.layout.title}. Take again.`,
      ),
    };
  }
  const faulty = readings.channels.filter((channel) => channel.faults.length > 0);
  if (faulty.length > 0) {
    const names = faulty.map((channel) => channel.channel).join(', ');
    return { done: false, missing: msg(str`Not to be trusted before it is repeated: ${names}.`) };
  }
  const missing = missingOfGoodTake(readings, state.layout);
  return { done: missing === null, missing };
}

/** What a take without damaged speakers asks for, as its title does; null when nothing. */
function missingOfGoodTake({ channels }: Readings, layout: Layout): string | null {
  const read = new Set(channels.map(({ channel }) => channel));
  const unread = layout.channels.map(({ label }) => label).filter((label) => !read.has(label));
  if (unread.length > 0) return msg(str`No take has come to ${sayList(unread)} yet.`);
  if (mostInverted(channels)) {
    return msg('Settle first what turns the polarity of most speakers over.');
  }
  const inverted = channels.filter(({ polarity }) => polarity === 'inverted');
  if (inverted.length === 0) return null;
  const names = sayList(inverted.map(({ channel }) => channel));
  return msg(str`Put the polarity of ${names} right and run the take again.`);
}

function standingOfPropose(state: BenchState): Standing {
  const proposal = state.proposal;
  if (!proposal) return { done: false, missing: msg('No settings yet: they come from a take.') };
  const open = proposal.groups.filter(
    (group) => group.group !== 'subs' && group.crossoverHz === null,
  );
  if (open.length > 0) {
    const names = open.map((group) => group.group).join(', ');
    return { done: false, missing: msg(str`No crossover could be proposed for ${names}.`) };
  }
  return {
    done: true,
    missing: msg('Type the settings into the processor before you prove them.'),
  };
}

function standingOfProve(state: BenchState): Standing {
  const { proof, proving } = state;
  if (proving && !proof) {
    return { done: false, missing: msg('What was played through the processor is being judged.') };
  }
  if (!proof) {
    return {
      done: false,
      missing: msg('Nothing is proved until the settings are typed in and measured again.'),
    };
  }
  if (isOldProof(state)) {
    return { done: false, missing: msg('The settings have changed since they were proved.') };
  }
  const { fail, 'cannot tell': untold } = proof.counts;
  if (fail > 0) {
    return {
      done: false,
      missing: msg(
        str`${fail} ${fail === 1 ? msg('line fails') : msg('lines fail')}: change what they say, and prove them again.`,
      ),
    };
  }
  if (untold > 0) {
    return {
      done: false,
      missing: msg(
        str`${untold} ${untold === 1 ? msg('line') : msg('lines')} cannot be told; each says what would settle it.`,
      ),
    };
  }
  return { done: true, missing: null };
}
