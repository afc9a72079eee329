import { describe, expect, it } from 'vitest';
import { speedOfSound } from '../../../dsp/level/speed-of-sound';
import { nothingChosen } from '../../../src/proposal/choices';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import type { Proposal } from '../../../src/proposal/proposal';
import type { ProposalOptions } from '../../../src/proposal/proposal-options';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import { withGain } from '../../../src/reading/at-gain';
import type { ChannelReading, Readings } from '../../../src/reading/reading';
import type { ChannelLabel } from '../../../src/system/channel';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { pureBass, roomyBass } from './sample-bass';
import { layoutNamed, readingsOf, rolloffAt } from './sample-readings';
import { flatSum, sampleSheet } from './sample-sheet';

// A low-pass far above and no low cut, so that only the crossover's own filters act.
const sheet = sampleSheet({
  filters: flatSum,
  subLowPass: { stepsHz: [20000], notBelowHighestBedCrossover: true },
  lowCut: { stepsHz: [] },
  distance: { unit: 'm', step: 0.01, low: 0, high: 18 },
});
const metresPerSecond = speedOfSound(20);

function propose(readings: Readings, options: ProposalOptions = {}): Proposal {
  const layout = layoutNamed(readings.layout);
  const proposal = proposeSettings(readings, layout, defaultProcessorSteps, { sheet, ...options });
  if (isTrouble(proposal)) throw new Error(proposal.sentence);
  return proposal;
}

const main: Partial<ChannelReading> = { bass: pureBass(0), rolloff: rolloffAt(60, 50) };

function oneSub(lateSeconds: number, gain = 1, known: Partial<ChannelReading> = {}): Readings {
  return readingsOf('2.1', {
    FL: main,
    FR: main,
    'Sub 1': { bass: pureBass(lateSeconds, gain), rolloff: rolloffAt(25, 22), ...known },
  });
}

function channelOf(proposal: Proposal, label: ChannelLabel) {
  return proposal.channels.find(({ channel }) => channel === label);
}

describe('one sub', () => {
  it('is typed as far away as its sound is late through the crossover', () => {
    // Mains 2.50 m away; the sub's bass 5 ms later: 2.50 m + 0.005 s · 343.2 m/s = 4.216 m.
    const proposal = propose(oneSub(0.005));
    expectClose(proposal.subs?.subs[0]?.wishedMetres, 2.5 + 0.005 * metresPerSecond, 0.02);
    expectClose(channelOf(proposal, 'Sub 1')?.distanceMetres, 4.22, 0.02);
    expect(proposal.subs?.subs[0]?.polarity).toBe('normal');
    // Linkwitz-Riley sides in phase lose nothing.
    expectClose(proposal.subs?.alignment?.sum.lossDb, 0, 0.01);
    expect(proposal.subs?.alignment?.channels).toEqual(['FL', 'FR']);
  });

  it('is turned over where its polarity is, without a word of wrong wires', () => {
    const turned = propose(oneSub(0.005, -1));
    expect(turned.subs?.subs[0]?.polarity).toBe('inverted');
    expectClose(turned.subs?.alignment?.sum.lossDb, 0, 0.01);
    expect(channelOf(turned, 'Sub 1')?.polarity).toBe('cannot tell');
    expect(turned.subs?.phase[0]?.sentence).toContain('It does not mean that a wire is wrong.');
  });

  it('counts a main whose wires are to be swapped as swapped', () => {
    const readings = readingsOf('3.1', {
      FL: main,
      FR: { ...main, bass: pureBass(0, -1), polarity: 'inverted' },
      FC: main,
      'Sub 1': { bass: pureBass(0.005), rolloff: rolloffAt(25, 22) },
    });
    expectClose(propose(readings).subs?.alignment?.sum.lossDb, 0, 0.01);
  });

  it('stays within a period of where the direct sounds line up, whatever serves all groups', () => {
    // Invented rooms in which another delay within 0.4 dB lies more than a period away.
    for (const seed of [27, 38, 56, 58]) {
      const roomy = (n: number) => ({
        bass: roomyBass(0, 10 * seed + n),
        rolloff: rolloffAt(60, 50),
      });
      const readings = readingsOf('3.1', {
        FL: roomy(1),
        FR: roomy(2),
        FC: roomy(3),
        'Sub 1': { bass: roomyBass(0.005, 10 * seed + 4), rolloff: rolloffAt(25, 22) },
      });
      const { subs } = propose(readings);
      const late = ((subs?.subs[0]?.wishedMetres ?? NaN) - 2.5) / metresPerSecond;
      expectClose(late, 0.005, 0.9 / (subs?.alignment?.crossoverHz ?? NaN));
    }
  });

  it('moves later by the tuner’s own wish, which the sum shows', () => {
    const choices = { ...nothingChosen, subsLaterSeconds: 0.002 };
    const proposal = propose(oneSub(0.005), { choices });
    expectClose(
      channelOf(proposal, 'Sub 1')?.distanceMetres,
      2.5 + 0.003 * metresPerSecond,
      0.02,
      'later is nearer',
    );
    expect(proposal.subs?.alignment?.sum.lossDb).toBeGreaterThan(0.3);
  });

  it('turns over by the tuner’s own wish, which the sum shows', () => {
    const turned = propose(oneSub(0.005), { choices: { ...nothingChosen, subsTurned: true } });
    expect(turned.subs?.subs[0]?.polarity).toBe('inverted');
    expect(turned.settings.inverted).toEqual(['Sub 1']);
    expect(turned.subs?.alignment?.sum.lossDb).toBeGreaterThan(3);
    expectClose(turned.subs?.alignment?.asProposedLossDb, 0, 0.01);
  });

  it('lists other delays in steps of the processor, none that is the proposal', () => {
    for (const late of [0.001, 0.0042, 0.005, 0.0077]) {
      const { alternatives = [] } = propose(oneSub(late, -1)).subs?.alignment ?? {};
      for (const { laterSeconds, turned } of alternatives) {
        const steps = (laterSeconds * metresPerSecond) / 0.01;
        expectClose(steps, Math.round(steps), 1e-6);
        // A quarter of a period of the highest crossover there is, 200 Hz.
        expect(turned || Math.abs(laterSeconds) >= 1 / 800).toBe(true);
      }
    }
  });

  it('moves all distances together where it would stand before the microphone', () => {
    // The sub 10 ms early: 2.50 m − 3.432 m = −0.93 m.
    const proposal = propose(oneSub(-0.01));
    const [fl, sub] = [channelOf(proposal, 'FL'), channelOf(proposal, 'Sub 1')];
    expect(sub?.distanceMetres).toBeGreaterThanOrEqual(0);
    expectClose(
      (fl?.distanceMetres ?? 0) - (sub?.distanceMetres ?? 0),
      0.01 * metresPerSecond,
      0.02,
    );
    expect(sub?.distanceReason).toContain('together, which changes no delay');
  });

  it('goes by arrival where its bass was not captured, which is named', () => {
    const proposal = propose(oneSub(0, 1, { bass: null, distanceMetres: 3.1 }));
    expect(channelOf(proposal, 'Sub 1')?.distanceMetres).toBe(3.1);
    expect(proposal.subs?.alignment).toBeNull();
    expect(proposal.missing).toContainEqual(
      expect.objectContaining({
        what: 'sub alignment',
        action: expect.stringMatching(/^Take again/),
      }),
    );
  });

  it('is not aligned in noise', () => {
    const proposal = propose(oneSub(0.005, 1, { bassMarginDb: 6 }));
    expect(proposal.subs?.alignment).toBeNull();
    expect(proposal.missing.map(({ what }) => what)).toContain('sub alignment');
  });
});

describe('several subs', () => {
  const twoSubs = (second: ChannelReading['bass']): Readings =>
    readingsOf('2.2', {
      FL: main,
      FR: main,
      'Sub 1': { bass: pureBass(0.003), rolloff: rolloffAt(25, 22) },
      'Sub 2': { bass: second, rolloff: rolloffAt(25, 22) },
    });

  it('are levelled together: two alike in phase are 6.02 dB louder than one', () => {
    const proposal = propose(twoSubs(pureBass(0.003)));
    // Mains and each sub at −30 dB: −6.02 dB, rounded to steps of 0.5 dB.
    for (const label of ['Sub 1', 'Sub 2'] as const) {
      expect(channelOf(proposal, label)?.levelTrimDb).toBe(-6);
      expectClose(channelOf(proposal, label)?.level?.costDb, 0.0206, 1e-3);
    }
    const choices = { ...nothingChosen, bassPreferenceDb: 3 };
    const louder = propose(twoSubs(pureBass(0.003)), { choices });
    expect(channelOf(louder, 'Sub 2')?.levelTrimDb).toBe(-3);
    expect(channelOf(louder, 'Sub 2')?.levelReason).toContain('You want the subs 3.0 dB louder');
  });

  it('each wait for the other', () => {
    const proposal = propose(twoSubs(pureBass(0.007)));
    const [first, second] = proposal.subs?.subs ?? [];
    expectClose(
      (second?.wishedMetres ?? 0) - (first?.wishedMetres ?? 0),
      0.004 * metresPerSecond,
      0.04,
    );
  });

  it('show how they differ from seat to seat only where there are seats', () => {
    const readings = twoSubs(pureBass(0.007));
    expect(propose(readings).subs?.spread).toBeNull();
    const other = twoSubs(pureBass(0.002));
    const otherSeats = [{ name: 'Seat 2', readings: other }];
    const spread = propose(readings, { otherSeats }).subs?.spread;
    expect(spread?.deviationDb).toBeLessThanOrEqual(spread?.asWiredDb ?? 0);
    expect(propose(readings, { otherSeats }).seats).toEqual(['Seat 1', 'Seat 2']);
  });
});

describe('other seats', () => {
  it('of another layout are left out and named', () => {
    const otherSeats = [{ name: 'Sofa', readings: readingsOf('5.1') }];
    const proposal = propose(oneSub(0.005), { otherSeats });
    expect(proposal.seats).toEqual(['Seat 1']);
    expect(proposal.missing[0]?.sentence).toContain('Sofa is left out of the sums.');
  });

  it('captured with another gain are left out and named, and a nearer seat is not', () => {
    const louder = (gainDb: number) => [
      { name: 'Sofa', readings: withGain(oneSub(0.005), gainDb) },
    ];
    const left = propose(oneSub(0.005), { otherSeats: louder(9) });
    expect(left.seats).toEqual(['Seat 1']);
    expect(left.missing[0]?.sentence).toContain('captured 9 dB louder than at Seat 1');
    const softer = propose(oneSub(0.005), { otherSeats: louder(-8) });
    expect(softer.missing[0]?.sentence).toContain('captured 8 dB softer');
    expect(propose(oneSub(0.005), { otherSeats: louder(4) }).seats).toEqual(['Seat 1', 'Sofa']);
  });

  it('of another temperature are named', () => {
    const cold = { ...oneSub(0.005), temperatureCelsius: 10 };
    const proposal = propose(oneSub(0.005), { otherSeats: [{ name: 'Sofa', readings: cold }] });
    expect(proposal.missing[0]).toMatchObject({ what: 'temperature' });
    expect(proposal.missing[0]?.sentence).toContain('10.0 °C to 20.0 °C');
  });

  it('change nothing by their order', () => {
    const one = { name: 'A', readings: oneSub(0.004) };
    const two = { name: 'B', readings: oneSub(0.006) };
    expect(propose(oneSub(0.005), { otherSeats: [one, two] })).toEqual(
      propose(oneSub(0.005), { otherSeats: [two, one] }),
    );
  });
});

it('two steps: the first without sums, in nothing else other than the subs', () => {
  const readings = oneSub(0.005);
  const first = propose(readings, { sums: 'later' });
  const whole = propose(readings);
  expect([first.sums, whole.sums]).toEqual(['coming', 'there']);
  expect(first.groups.map(({ crossoverHz }) => crossoverHz)).toEqual(
    whole.groups.map(({ crossoverHz }) => crossoverHz),
  );
  expect(channelOf(first, 'FL')).toEqual(channelOf(whole, 'FL'));
  expect(first.missing).toEqual(whole.missing);
});
