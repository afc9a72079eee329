import { describe, expect, it } from 'vitest';
import type { Channel, Layout } from '../../../src/system/channel';
import { channelMask } from '../../../src/system/channel-mask';
import { layoutChoices, layoutFromName, referenceChannel } from '../../../src/system/layout';
import { isTrouble } from '../../../src/trouble';

function layout(name: string): Layout {
  const found = layoutFromName(name);
  if (isTrouble(found)) throw new Error(found.sentence);
  return found;
}

const labels = (name: string): string =>
  layout(name)
    .channels.map((c) => c.label)
    .join(' ');

const everyLayout = layoutChoices.beds.flatMap((bed) =>
  layoutChoices.subs.flatMap((subs) =>
    layoutChoices.heights.map((heights) => layout(`${bed}.${subs}.${heights}`)),
  ),
);

/** FL ↔ FR, TpSiL ↔ TpSiR, FLw ↔ FRw; a centre or a sub is its own partner. */
function partnerLabel(label: string): string {
  if (label.startsWith('Sub') || label === 'FC') return label;
  return label.replace(/[LR](?=w?$)/, (side) => (side === 'L' ? 'R' : 'L'));
}

describe('layoutFromName', () => {
  it.each([
    ['2.0', 'FL FR'],
    ['3.1', 'FL FR FC Sub 1'],
    ['4.0', 'FL FR SiL SiR'],
    ['5.1', 'FL FR FC Sub 1 SiL SiR'],
    ['6.0', 'FL FR BL BR SiL SiR'],
    ['7.1', 'FL FR FC Sub 1 BL BR SiL SiR'],
    ['8.0', 'FL FR BL BR SiL SiR FLw FRw'],
    ['5.2.4', 'FL FR FC Sub 1 SiL SiR TpFL TpFR TpBL TpBR Sub 2'],
    [
      '9.4.6',
      'FL FR FC Sub 1 BL BR SiL SiR TpFL TpFR TpBL TpBR TpSiL TpSiR FLw FRw Sub 2 Sub 3 Sub 4',
    ],
  ])('reads %s as %s', (name, expected) => {
    expect(labels(name)).toBe(expected);
  });

  it.each([
    ['FL FR FC SiL SiR Sub 1 TpSiL TpSiR', 'FL FR FC Sub1 SiL SiR TpSiL TpSiR', '5.1.2'],
    ['fl, fr, flw, frw', 'FL FR FLw FRw', '4.0'],
    ['FR FL', '2.0', '2.0'],
    ['Sub1 SiR SiL FC FR FL', '5.1', '5.1'],
  ])('reads the list %s, which is named %s', (list, name, title) => {
    expect(layout(list)).toMatchObject({ name, title });
    expect(layout(name)).toEqual(layout(list));
  });

  it.each([
    ['FC Sub 1', /no front left/],
    ['FL FR SiL', /SiL stands there without SiR/],
    ['FL FR BL BR', /single pair of surrounds is the side pair/],
    ['FL FR Sub 2', /Sub 1 is missing/],
    ['FL FR FL', /names FL twice/],
    ['FL FR XX', /“XX” is no loudspeaker/],
  ])('refuses the list %s', (list, why) => {
    const answer = layoutFromName(list);
    expect(isTrouble(answer) && answer.sentence).toMatch(why);
  });

  it('names the layout the short way, whatever way it was written', () => {
    expect(layout(' 5.1.0 ').name).toBe('5.1');
    expect(layout('7.2.4').name).toBe('7.2.4');
  });

  it('holds as many channels as the name counts, each once, with FL to refer to', () => {
    expect(everyLayout).toHaveLength(160);
    for (const { name, channels } of everyLayout) {
      const counted = name.split('.').reduce((sum, part) => sum + Number(part), 0);
      expect(new Set(channels.map((c) => c.label)).size).toBe(counted);
      expect(channels).toHaveLength(counted);
      expect(referenceChannel({ name, channels })).toBe('FL');
      expect(layout(channels.map(({ label }) => label).join(' ')).name).toBe(name);
    }
  });

  it('mirrors every left speaker on the right', () => {
    const mirrored = (range: Channel['azimuthRange']): Channel['azimuthRange'] =>
      range && [-range[1], -range[0]];
    for (const { channels } of everyLayout) {
      for (const channel of channels.filter((c) => c.kind !== 'sub')) {
        const partner = channels.find((c) => c.label === partnerLabel(channel.label));
        expect(partner?.azimuthDegrees).toBe(0 - channel.azimuthDegrees);
        expect(partner?.elevationDegrees).toBe(channel.elevationDegrees);
        expect(partner?.azimuthRange).toEqual(mirrored(channel.azimuthRange));
        expect(partner?.elevationRange).toEqual(channel.elevationRange);
        expect(partner?.group).toBe(channel.group);
        if (channel.label.match(/L(?=w?$)/)) expect(channel.azimuthDegrees).toBeGreaterThan(0);
      }
    }
  });

  it('keeps nominal angles inside their ranges and no two speakers in one place', () => {
    for (const { channels } of everyLayout) {
      const places = new Set<string>();
      for (const c of channels) {
        for (const [angle, range] of [
          [c.azimuthDegrees, c.azimuthRange],
          [c.elevationDegrees, c.elevationRange],
        ] as const) {
          if (range) expect(angle).toBeGreaterThanOrEqual(range[0]);
          if (range) expect(angle).toBeLessThanOrEqual(range[1]);
        }
        places.add(`${c.azimuthDegrees} ${c.elevationDegrees}`);
      }
      expect(places.size).toBe(channels.length);
    }
  });

  it('moves the sides forward when backs stand behind them, and spreads six heights', () => {
    const azimuth = (name: string, label: string): number | undefined =>
      layout(name).channels.find((c) => c.label === label)?.azimuthDegrees;
    expect([azimuth('5.1', 'SiL'), azimuth('7.1', 'SiL')]).toEqual([110, 90]);
    expect([azimuth('5.1.4', 'TpBL'), azimuth('5.1.6', 'TpBL')]).toEqual([110, 135]);
  });

  it('sorts heights, bed and subs, and says their plain names', () => {
    const say = layout('3.1.2').channels.map((c) => `${c.name}: ${c.kind}, ${c.group}`);
    expect(say).toEqual([
      'front left: bed, fronts',
      'front right: bed, fronts',
      'front centre: bed, centre',
      'subwoofer 1: sub, subs',
      'top front left: height, front heights',
      'top front right: height, front heights',
    ]);
  });

  it.each([
    ['', 'two or three whole numbers'],
    ['five', 'two or three whole numbers'],
    ['5', 'two or three whole numbers'],
    ['5.1.4.2', 'two or three whole numbers'],
    ['5.-1', 'two or three whole numbers'],
    ['1.0', 'no bed of 1'],
    ['10.1', 'no bed of 10'],
    ['5.5', '0 to 4 subs, not 5'],
    ['5.1.3', '0, 2, 4 or 6 heights, not 3'],
  ])('refuses “%s”, saying what is wrong and how a name reads', (name, why) => {
    const answer = layoutFromName(name);
    if (!isTrouble(answer)) throw new Error('not refused');
    expect(answer.trouble).toBe('bad-layout');
    expect(answer.sentence).toContain(`“${name}”`);
    expect(answer.sentence).toContain(why);
    expect(answer.sentence).toContain('bed.subs.heights');
  });
});

describe('channelMask', () => {
  it('has as many bits as channels with a bit, and rises in their order', () => {
    for (const each of everyLayout) {
      const bits = each.channels.map((c) => channelMask([c.label]));
      const known = bits.filter((bit) => bit !== 0);
      expect(known).toEqual([...known].sort((a, b) => a - b));
      expect(bits.indexOf(0) === -1 || bits.slice(bits.indexOf(0)).every((b) => b === 0)).toBe(
        true,
      );
      expect(channelMask(each)).toBe(known.reduce((sum, bit) => sum + bit, 0));
      expect(channelMask(each.channels.map((c) => c.label))).toBe(channelMask(each));
    }
  });
});
