import { fitRolloffTogether } from '../../dsp/rolloff/fit-rolloff';
import type { RolloffBands } from '../../dsp/rolloff/rolloff-bands';
import type { ChannelLabel } from '../system/channel';
import { subUpperHz } from './read-rolloff';
import { marginBetween, tellRolloff, type RolloffFinding } from './rolloff-finding';

/** The bass of one speaker at one seat: rolloffBands of its response, plain data. */
export interface HeardAtSeat {
  readonly channel: ChannelLabel;
  readonly bands: RolloffBands;
}

/**
 * One roll-off from the bass of one speaker at several seats, of several speakers of one model
 * at one, or of both; all mains or all subs, none with a crossover in force. It holds for every
 * speaker among them. `sheetF3Hz`: f3 on their sheet, 5 to 500. RangeError for an empty list.
 * Sources: see dsp/rolloff/fit-rolloff.
 */
export function readRolloffTogether(
  heard: readonly HeardAtSeat[],
  isSub: boolean,
  sheetF3Hz: number | null = null,
): RolloffFinding {
  const readings = heard.map(({ channel, bands }) => ({ bands, speaker: channel }));
  const fit = fitRolloffTogether(readings, {
    ...(sheetF3Hz === null ? {} : { sheetF3Hz }),
    ...(isSub ? { upperHz: subUpperHz } : {}),
  });
  const margins = readings.flatMap(
    ({ bands }) => marginBetween(bands.hz, bands.marginDb, 40, 80) ?? [],
  );
  return tellRolloff(fit, isSub, margins.length > 0 ? Math.min(...margins) : null);
}
