import { throughPath } from '../../dsp/bass/electrical-path';
import { bassGrid } from '../../dsp/bass/transfer';
import { fitPath, type PathFit } from '../../dsp/comparison/fit-path';
import { heardBass } from '../reading/heard-bass';
import type { ChannelReading } from '../reading/reading';
import type { PairedSpeaker } from './pair-positions';

/** Bands in which one speaker is held against itself, Hz. */
const bands = { main: [120, 480], sub: [25, 100] } as const;
/** How much a delay may differ from what the arrivals say, seconds. */
const mostSeconds = { main: 0.2e-3, sub: 0.04 } as const;
/** Less alike than this, two responses have no one delay and no sign. */
const leastAgreement = 0.8;

/**
 * A speaker's bass now beside its own then: delay, gain and whether it was turned over. Null where
 * one of them was not kept, or the two are too unlike to say.
 */
export function bassChange({ channel, now, before }: PairedSpeaker): PathFit | null {
  const [is, was] = [heardBass(now), heardBass(before)];
  if (!is || !was) return null;
  const hz = bassGrid();
  const kind = channel.kind === 'sub' ? 'sub' : 'main';
  const late = kind === 'main' ? laterSeconds(now, before) : 0;
  const [expected] =
    late === null ? [] : throughPath([was], { filters: [], delaySeconds: late }, hz);
  const fit = expected && fitPath(is, expected, hz, bands[kind], mostSeconds[kind]);
  return fit && fit.agreement >= leastAgreement ? fit : null;
}

function laterSeconds(now: ChannelReading, before: ChannelReading): number | null {
  const [is, was] = [now.arrivalSeconds, before.arrivalSeconds];
  return is === null || was === null ? null : is - was;
}
