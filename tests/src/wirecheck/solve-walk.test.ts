import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import type { ChannelLabel } from '../../../src/system/channel';
import { nothingDeclared, type DeclaredSystem } from '../../../src/system/declared-system';
import { layoutFromName } from '../../../src/system/layout';
import { isTrouble } from '../../../src/trouble';
import { solveWalk } from '../../../src/wirecheck/solve-walk';
import type { WalkStop } from '../../../src/wirecheck/walk';
import { plainFindings } from './plain-finding';

const named = layoutFromName('5.1.4');
if (isTrouble(named)) throw new Error(named.sentence);
const layout = named;
const labels = layout.channels.map(({ label }) => label);

/** Where the speakers stand, metres from the seat: 2.5 m away as the layout has them, the sub in a corner. */
const places = layout.channels.map(({ label, azimuthDegrees, elevationDegrees }) => {
  if (label === 'Sub 1') return [2.8, 2.2, -0.8];
  const [azimuth, elevation] = [azimuthDegrees, elevationDegrees].map((d) => (d * Math.PI) / 180);
  const flat = 2.5 * Math.cos(elevation ?? 0);
  return [
    flat * Math.cos(azimuth ?? 0),
    flat * Math.sin(azimuth ?? 0),
    2.5 * Math.sin(elevation ?? 0),
  ];
});

/** The same, as a tuner declares it. */
const system: DeclaredSystem = {
  ...nothingDeclared,
  places: { 'Sub 1': { azimuthDegrees: 38, elevationDegrees: -13, distanceMetres: 3.6 } },
};

type Wiring = Readonly<Partial<Record<ChannelLabel, readonly ChannelLabel[]>>>;

/**
 * A walk through that system: direct sound by distance over a diffuse field 4 dB under it at 1 m,
 * gains ±5 dB from speaker to speaker, levels good to 1.5 dB, the microphone 20 to 40 cm away.
 */
function walk(wiring: Wiring, seed: number, inverted: readonly ChannelLabel[] = []): WalkStop[] {
  const random = seededRandom(seed);
  const normal = gaussian(random);
  const gains = labels.map(() => 10 * random() - 5);
  const delays = labels.map(() => 0.004 * random());
  return labels.map((speaker, at) => {
    const near = 0.2 + 0.2 * random();
    const sounds = labels.map((channel, number) => {
      const from = wiring[channel] ?? [channel];
      let power = 0;
      let first = Infinity;
      for (const source of from) {
        const index = labels.indexOf(source);
        const apart = Math.hypot(
          ...[0, 1, 2].map((axis) => (places[at]?.[axis] ?? 0) - (places[index]?.[axis] ?? 0)),
        );
        const metres = Math.max(near, apart);
        power += 10 ** ((gains[index] ?? 0) / 10) * (1 / metres ** 2 + 10 ** -0.4);
        first = Math.min(first, metres / 343);
      }
      const turned = from.includes(speaker) && inverted.includes(speaker);
      return {
        channel,
        lowDb: null,
        levelDb: from.length === 0 ? null : 10 * Math.log10(power) - 40 + 1.5 * normal(),
        arrivalSeconds: from.length === 0 ? null : first + (delays[number] ?? 0) + 0.1 * at,
        polarity: turned ? ('inverted' as const) : ('normal' as const),
      };
    });
    return { speaker, sounds };
  });
}

const found = (wiring: Wiring, seed: number, inverted: readonly ChannelLabel[] = []): string[] =>
  plainFindings(solveWalk(walk(wiring, seed, inverted), layout, system).findings);

describe('the walk check', () => {
  it('finds nothing in 100 systems that are wired right', () => {
    for (let seed = 1; seed <= 100; seed++) expect(found({}, seed)).toEqual([]);
  });

  it('names every pair that is exchanged', () => {
    let seed = 200;
    for (const [a, one] of labels.entries()) {
      for (const other of labels.slice(a + 1)) {
        const pair = [one, other].sort();
        expect(found({ [one]: [other], [other]: [one] }, seed++)).toEqual([
          `exchanged ${pair.join(' ')}`,
        ]);
      }
    }
  });

  it('names a round of three, in its direction', () => {
    const wiring: Wiring = { FL: ['SiL'], SiL: ['TpBL'], TpBL: ['FL'] };
    for (let seed = 300; seed < 320; seed++) {
      expect(found(wiring, seed)).toEqual(['exchanged FL SiL TpBL']);
    }
  });

  it('tells a silent channel and the speaker it leaves mute', () => {
    expect(found({ SiR: [] }, 400)).toEqual(['mute speaker SiR', 'silent SiR']);
  });

  it('tells two speakers on one channel', () => {
    expect(found({ SiL: ['SiL', 'SiR'], SiR: [] }, 500)).toEqual([
      'doubled SiL from SiL SiR',
      'silent SiR',
    ]);
  });

  it('tells a channel that sounds from a speaker whose own is silent', () => {
    expect(found({ TpFL: ['TpFR'], TpFR: [] }, 600)).toEqual([
      'TpFL elsewhere from TpFR',
      'mute speaker TpFL',
      'silent TpFR',
    ]);
  });

  it('tells an inverted speaker', () => {
    expect(found({}, 700, ['FC'])).toEqual(['inverted FC']);
  });

  it('cannot tell two channels that sound alike at both speakers', () => {
    const stops = walk({}, 800).map((stop) => ({
      ...stop,
      sounds: stop.sounds.map((sound) =>
        sound.channel === 'FL' || sound.channel === 'FR'
          ? { ...sound, levelDb: -40, arrivalSeconds: null }
          : sound,
      ),
    }));
    expect(plainFindings(solveWalk(stops, layout, system).findings)).toEqual(['cannot tell FL FR']);
  });

  it('judges a walk that left speakers out by those it visited', () => {
    const stops = walk({ FL: ['FR'], FR: ['FL'] }, 900).slice(0, 4);
    expect(plainFindings(solveWalk(stops, layout, system).findings)).toEqual(['exchanged FL FR']);
  });

  it('refuses a speaker that was visited twice', () => {
    const [stop] = walk({}, 1000);
    if (!stop) throw new Error('no stop');
    expect(() => solveWalk([stop, stop], layout)).toThrow(RangeError);
  });
});
