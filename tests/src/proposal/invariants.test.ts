import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { abilitiesOf, stepsFor } from '../../../src/proposal/abilities';
import type { ProposalChoices } from '../../../src/proposal/choices';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import type { Proposal } from '../../../src/proposal/proposal';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import type { Readings } from '../../../src/reading/reading';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { isTrouble } from '../../../src/trouble';
import { anyChoices, anyReadings, anySheet } from './any-case';
import { layoutNamed } from './sample-readings';

function propose(
  readings: Readings,
  sheet: ProcessorSheet,
  choices: ProposalChoices,
  layout = layoutNamed(readings.layout),
): Proposal {
  const options = { sheet, choices };
  const proposal = proposeSettings(readings, layout, defaultProcessorSteps, options);
  if (isTrouble(proposal)) throw new Error(proposal.sentence);
  return proposal;
}

function isStep(value: number, step: number, low: number, high: number): boolean {
  const count = value / step;
  return Math.abs(count - Math.round(count)) < 1e-6 && value >= low - 1e-9 && value <= high + 1e-9;
}

/** Runs a property over many cases without captured bass and some with it, which take longer. */
function always(check: (readings: Readings, sheet: ProcessorSheet, own: ProposalChoices) => void) {
  fc.assert(fc.property(anyReadings(false), anySheet, anyChoices, check), {
    numRuns: 150,
    seed: 11,
  });
  fc.assert(fc.property(anyReadings(true), anySheet, anyChoices, check), { numRuns: 12, seed: 12 });
}

describe('for any readings, sheet and choices', () => {
  it('every value is one the processor can take', { timeout: 120_000 }, () => {
    always((readings, sheet, choices) => {
      const { channels, groups, settings } = propose(readings, sheet, choices);
      const { distance, level } = sheet;
      for (const channel of channels) {
        if (channel.distance) {
          const { value, unit } = channel.distance;
          expect(unit).toBe(distance.unit);
          expect(isStep(value, distance.step, distance.low, distance.high)).toBe(true);
        }
        if (channel.level) {
          const { value } = channel.level;
          expect(isStep(value, level.stepDb, level.lowDb, level.highDb)).toBe(true);
        }
      }
      const abilities = abilitiesOf(defaultProcessorSteps, sheet);
      for (const { group, crossoverHz, nearestHz } of groups) {
        const steps = stepsFor(abilities, group);
        for (const hz of [crossoverHz, nearestHz, settings.crossoverHz[group] ?? null]) {
          if (hz !== null) expect(steps).toContain(hz);
        }
      }
      const { subLowPassHz, lowCutHz } = settings;
      if (subLowPassHz !== null) expect(sheet.subLowPass.stepsHz).toContain(subLowPassHz);
      if (lowCutHz !== null) expect(sheet.lowCut.stepsHz).toContain(lowCutHz);
      const typed = Object.values(settings.crossoverHz).filter((hz) => hz !== null);
      if (sheet.crossover.setting === 'one for all') {
        expect(new Set(typed).size).toBeLessThanOrEqual(1);
        // A step that no group is too small for, wherever there is one.
        const told = groups.filter(({ decidedBy }) => decidedBy !== null);
        const right = (told[0]?.alternatives ?? []).flatMap(({ stepHz }) =>
          told.every(({ alternatives }) =>
            alternatives.some((one) => one.stepHz === stepHz && one.breaks.length === 0),
          )
            ? [stepHz]
            : [],
        );
        for (const { crossoverHz } of told) {
          if (crossoverHz !== null && right.length > 0) expect(right).toContain(crossoverHz);
        }
      }
    });
  });

  it(
    'no more arrives than was sent, and every loss over 0.5 dB says which and why',
    {
      timeout: 120_000,
    },
    () => {
      always((readings, sheet, choices) => {
        const { ledger } = propose(readings, sheet, choices);
        for (const { lines } of [ledger.proposed, ...(ledger.own ? [ledger.own] : [])]) {
          for (const { channel, lossDb, leastLossDb, why, mends } of lines) {
            expect(lossDb).toBeGreaterThanOrEqual(0);
            expect(leastLossDb).toBeGreaterThanOrEqual(0);
            if (lossDb > 0.5) expect(why?.sentence).toContain(`${channel} loses`);
            for (const { gainDb, sentence } of mends) {
              expect(gainDb).toBeGreaterThan(0);
              expect(gainDb).toBeLessThanOrEqual(lossDb + 1e-9);
              expect(sentence).toMatch(/^[A-Z].*\.$/);
            }
          }
        }
      });
    },
  );

  it('nothing is no number, and every reason is a sentence', { timeout: 120_000 }, () => {
    always((readings, sheet, choices) => {
      const proposal = propose(readings, sheet, choices);
      expect(JSON.stringify(proposal)).not.toMatch(/NaN|Infinity|undefined/);
      const reasons = [
        ...proposal.groups.flatMap(({ reasons: own, fullRange }) => [...own, ...fullRange.reasons]),
        ...proposal.channels.flatMap((one) => [...one.distanceReasons, ...one.levelReasons]),
        ...(proposal.subs?.reasons ?? []),
        ...(proposal.subs?.lowCut.reasons ?? []),
      ];
      for (const { sentence } of reasons) expect(sentence).toMatch(/^[A-Z].*\.$/s);
      for (const one of proposal.channels) {
        const named = (what: string) =>
          proposal.missing.some(({ channel, what: is }) => channel === one.channel && is === what);
        expect(named('distance')).toBe(one.distance === null);
        expect(named('level')).toBe(one.level === null);
      }
    });
  });

  it('the order of channels changes nothing', { timeout: 120_000 }, () => {
    always((readings, sheet, choices) => {
      const layout = layoutNamed(readings.layout);
      const turned = { ...readings, channels: readings.channels.toReversed() };
      const mirrored = { ...layout, channels: layout.channels.toReversed() };
      expect(propose(turned, sheet, choices, mirrored)).toEqual(propose(readings, sheet, choices));
    });
  });

  it('a roll-off that is known less well never lowers what the measured rule asks for', () => {
    const more = fc.double({ min: 1, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(
        anyReadings(false),
        anySheet,
        anyChoices,
        more,
        (readings, sheet, own, factor) => {
          const noisier: Readings = {
            ...readings,
            channels: readings.channels.map((one) => ({
              ...one,
              rolloff: one.rolloff && {
                ...one.rolloff,
                f6UpperHz: one.rolloff.f6UpperHz * factor,
              },
            })),
          };
          const before = propose(readings, sheet, own).groups;
          for (const [index, { measuredHz }] of propose(noisier, sheet, own).groups.entries()) {
            const was = before[index]?.measuredHz ?? null;
            if (measuredHz !== null && was !== null) expect(measuredHz).toBeGreaterThanOrEqual(was);
          }
        },
      ),
      { numRuns: 100, seed: 13 },
    );
  });

  it(
    'more noise never widens what is claimed: an alignment is given up, not made up',
    {
      timeout: 120_000,
    },
    () => {
      fc.assert(
        fc.property(anyReadings(true), anySheet, anyChoices, (readings, sheet, own) => {
          const quieter: Readings = {
            ...readings,
            channels: readings.channels.map((one) => ({ ...one, bassMarginDb: 5 })),
          };
          expect(propose(quieter, sheet, own).subs?.alignment ?? null).toBeNull();
        }),
        { numRuns: 12, seed: 14 },
      );
    },
  );
});
