// ITU-R BS.2051-2 (2018), systems A, B, C, D, I and J; the standard was not at hand: positions as
// tabulated in the open reference implementation of ITU-R BS.2127. Left side; azimuth is positive
// to the left. The right side mirrors it, which tests/src/system/layout.test.ts holds.
import { describe, expect, it } from 'vitest';
import type { Channel, ChannelLabel } from '../../src/system/channel';
import { layoutFromName } from '../../src/system/layout';
import { isTrouble } from '../../src/trouble';

interface Row {
  readonly azimuth: number;
  readonly azimuthRange?: readonly [number, number];
  readonly elevation?: number;
  readonly elevationRange?: readonly [number, number];
}

const upper = { elevation: 30, elevationRange: [30, 55] } as const;
const centre: Row = { azimuth: 0 };
const front: Row = { azimuth: 30 };
const surround: Row = { azimuth: 110, azimuthRange: [100, 120] };
const frontOfSeven: Row = { azimuth: 30, azimuthRange: [30, 45] };
const side: Row = { azimuth: 90, azimuthRange: [85, 110] };
const back: Row = { azimuth: 135, azimuthRange: [120, 150] };

const systems: readonly (readonly [string, string, Partial<Record<ChannelLabel, Row>>])[] = [
  ['A, 0+2+0', '2.0', { FL: front }],
  ['B, 0+5+0', '5.1', { FL: front, FC: centre, SiL: surround }],
  [
    'C, 2+5+0',
    '5.1.2',
    {
      FL: front,
      FC: centre,
      SiL: surround,
      TpFL: { azimuth: 30, azimuthRange: [30, 45], ...upper },
    },
  ],
  [
    'D, 4+5+0',
    '5.1.4',
    {
      FL: front,
      FC: centre,
      SiL: surround,
      TpFL: { azimuth: 30, azimuthRange: [30, 45], ...upper },
      TpBL: { azimuth: 110, azimuthRange: [100, 135], ...upper },
    },
  ],
  ['I, 0+7+0', '7.1', { FL: frontOfSeven, FC: centre, SiL: side, BL: back }],
  [
    'J, 4+7+0',
    '7.1.4',
    {
      FL: frontOfSeven,
      FC: centre,
      SiL: side,
      BL: back,
      TpFL: { azimuth: 45, azimuthRange: [30, 45], ...upper },
      TpBL: { azimuth: 135, azimuthRange: [100, 150], ...upper },
    },
  ],
];

function channelsOf(name: string): readonly Channel[] {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  return layout.channels;
}

describe.each(systems)('system %s is layout %s', (_, name, rows) => {
  it('with every loudspeaker where the standard puts it', () => {
    for (const [label, row] of Object.entries(rows)) {
      const channel = channelsOf(name).find((each) => each.label === label);
      expect(channel?.azimuthDegrees).toBe(row.azimuth);
      expect(channel?.azimuthRange ?? undefined).toEqual(row.azimuthRange);
      expect(channel?.elevationDegrees).toBe(row.elevation ?? 0);
      if (row.elevationRange) expect(channel?.elevationRange).toEqual(row.elevationRange);
    }
  });

  it('and no loudspeaker more', () => {
    const named = channelsOf(name).filter((channel) => channel.kind !== 'sub');
    const expected = Object.keys(rows).length * 2 - ('FC' in rows ? 1 : 0);
    expect(named).toHaveLength(expected);
  });
});
