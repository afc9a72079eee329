import type { BenchState } from '../../../src/session/bench';
import type { ProofState } from '../../../src/session/derive-proof';
import { after, before, layout, prove, typed, type Done } from '../../src/proof/told-proof';
import { FakeBench } from '../fake-bench';

/** A proof of what a processor did, in a system that is all formulas. */
export function toldProof(done: Done, changes: Partial<ProofState> = {}): ProofState {
  const proof = prove(done);
  return { ...proof, id: 'told', typed, readings: after(done), before, toRepeat: [], ...changes };
}

/** A bench that holds it, and nothing proposed since. */
export function benchWithProof(done: Done, changes: Partial<BenchState> = {}): FakeBench {
  const proof = toldProof(done);
  return new FakeBench(layout.name, { layout, readings: before, proof, ...changes });
}
