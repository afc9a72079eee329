import { climbLevel, type ClimbOptions } from '../../../src/soundlevel/climb-level';
import type { ClimbRequest, ClimbResult, ClimbState } from '../../../src/soundlevel/sound-level';
import { isTrouble, type Trouble } from '../../../src/trouble';
import { fakeRig, type Chain, type FakeRig } from './fake-rig';

export const calibration = {
  offsetDb: 120,
  how: 'calibrator',
  at: '2026-01-01T00:00:00Z',
  microphone: 'invented',
} as const;

export interface Climbed {
  readonly rig: FakeRig;
  readonly outcome: ClimbResult | Trouble;
  readonly states: readonly ClimbState[];
  readonly heard: readonly (readonly [number, number])[];
}

/** Climbs on a chain; margin 25 dB and cap −6 dB unless told. */
export async function climb(
  chain: Chain,
  request: Partial<ClimbRequest> = {},
  options: Partial<ClimbOptions> = {},
): Promise<Climbed> {
  const rig = fakeRig(chain);
  const states: ClimbState[] = [];
  const heard: [number, number][] = [];
  const outcome = await climbLevel(
    rig,
    { marginDb: 25, targetDb: null, capDb: -6, ...request },
    {
      signal: new AbortController().signal,
      channel: 'FL',
      isSub: false,
      routes: {},
      soundLevel: null,
      onState: (state) => states.push(state),
      onLevel: (db, seconds) => heard.push([db, seconds]),
      ...options,
    },
  );
  return { rig, outcome, states, heard };
}

/** The result; throws when there was trouble. */
export function resultOf({ outcome }: Climbed): ClimbResult {
  if (isTrouble(outcome)) throw new Error(outcome.sentence);
  return outcome;
}

/** Changes of the gain, dB. */
export function steps({ rig }: Climbed): number[] {
  return rig.gains.slice(1).map(({ gainDb }, i) => gainDb - (rig.gains[i]?.gainDb ?? 0));
}
