import type { BassBands, Estimate, RolloffReading } from '../../../src/reading/reading';
import type { RolloffTogether } from '../../../src/reading/rolloff-together';
import type { ChannelLabel } from '../../../src/system/channel';

/** Bass that is only told apart, not read. */
export function inventedBass(): BassBands {
  const flat = Array.from({ length: 61 }, () => 1);
  return { power: flat, noisePower: flat.map(() => 0), lines: flat, early: [] };
}

/** A roll-off whose f3 is told, f6 and f10 in proportion, each within a share of itself. */
export function inventedRolloff(f3Hz: number, share = 0.1): RolloffReading {
  const around = (hz: number): Estimate => ({
    median: hz,
    interval: [hz * (1 - share), hz * (1 + share)],
  });
  return {
    f3Hz: around(f3Hz),
    f6Hz: around(0.76 * f3Hz),
    f10Hz: around(0.58 * f3Hz),
    f6UpperHz: 0.76 * f3Hz * (1 + share / 2),
    box: { kind: 'closed', probability: 0.9 },
  };
}

/** A finding of speakers that were all heard at some seats; without a roll-off where it is null. */
export function inventedTogether(
  channels: readonly ChannelLabel[],
  rolloff: RolloffReading | null,
  more: {
    readonly seats?: number;
    readonly sheetF3Hz?: number;
    readonly notes?: readonly string[];
  } = {},
): RolloffTogether {
  const seats = Array.from({ length: more.seats ?? 3 }, (_, index) => `seat-${index + 1}`);
  const hz = Float64Array.from({ length: 100 }, (_, i) => 10 * 2 ** (i / 18));
  const fallDb = hz.map((f) => -10 * Math.log10(1 + ((rolloff?.f3Hz.median ?? 0) / f) ** 4));
  return {
    order: {
      channels,
      isSub: channels.every((label) => label.startsWith('Sub')),
      sheetF3Hz: more.sheetF3Hz ?? null,
      heard: seats.flatMap((seat) =>
        channels.map((channel) => ({ channel, seat, bass: inventedBass() })),
      ),
    },
    finding: {
      rolloff,
      curve: rolloff && {
        hz,
        medianDb: fallDb,
        lowDb: fallDb.map((db) => db - 1),
        highDb: fallDb.map((db) => db + 1),
      },
      bassMarginDb: null,
      notes: more.notes ?? [],
    },
  };
}
