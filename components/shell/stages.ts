import type { BenchState } from '../../src/session/bench';
import { isOldProof } from '../../src/session/derive-proof';
import { patchStanding } from '../patch/patch-standing';

export type StageId = 'plan' | 'patch' | 'probe' | 'propose' | 'prove';

export const stageNames: Readonly<Record<StageId, string>> = {
  plan: 'Plan',
  patch: 'Patch',
  probe: 'Probe',
  propose: 'Propose',
  prove: 'Prove',
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
    missing: `The plan says ${state.layout.title}. Go on when that is what stands in the room, and no speaker more.`,
  };
}

function standingOfProbe(state: BenchState): Standing {
  const readings = state.readings;
  if (!readings) return { done: false, missing: 'Nothing can be proposed before a take is read.' };
  if (readings.layout !== state.layout.name) {
    return {
      done: false,
      missing: `The newest take was made for ${readings.layout}; the plan now says ${state.layout.title}. Take again.`,
    };
  }
  const faulty = readings.channels.filter((channel) => channel.faults.length > 0);
  if (faulty.length > 0) {
    const names = faulty.map((channel) => channel.channel).join(', ');
    return { done: false, missing: `Not to be trusted before it is repeated: ${names}.` };
  }
  return { done: true, missing: null };
}

function standingOfPropose(state: BenchState): Standing {
  const proposal = state.proposal;
  if (!proposal) return { done: false, missing: 'No settings yet: they come from a take.' };
  const open = proposal.groups.filter(
    (group) => group.group !== 'subs' && group.crossoverHz === null,
  );
  if (open.length > 0) {
    const names = open.map((group) => group.group).join(', ');
    return { done: false, missing: `No crossover could be proposed for ${names}.` };
  }
  return { done: true, missing: 'Type the settings into the processor before you prove them.' };
}

function standingOfProve(state: BenchState): Standing {
  const { proof } = state;
  if (!proof) {
    return {
      done: false,
      missing: 'Nothing is proved until the settings are typed in and measured again.',
    };
  }
  if (isOldProof(state)) {
    return { done: false, missing: 'The settings have changed since they were proved.' };
  }
  const { fail, 'cannot tell': untold } = proof.counts;
  if (fail > 0) {
    return {
      done: false,
      missing: `${fail} ${fail === 1 ? 'line fails' : 'lines fail'}: change what they say, and prove them again.`,
    };
  }
  if (untold > 0) {
    return {
      done: false,
      missing: `${untold} ${untold === 1 ? 'line' : 'lines'} cannot be told; each says what would settle it.`,
    };
  }
  return { done: true, missing: null };
}
