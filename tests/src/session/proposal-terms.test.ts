import { describe, expect, it } from 'vitest';
import { proposalTerms } from '../../../src/session/proposal-terms';
import type { TakeRecord } from '../../../src/session/document';
import { sampleDocument, sampleTake } from '../../components/sample-session';
import { expectClose } from '../../close';
import { layoutNamed } from '../proposal/sample-readings';
import { pureBass } from '../proposal/sample-bass';

const layout = layoutNamed('3.1');
const seat = (n: number) => ({ id: `seat-${n}`, name: `Seat ${n}`, kind: 'seat' }) as const;

/** A take of which every speaker has a bass `gain` strong. */
function take(n: number, gain: number, gainDb: number | undefined): TakeRecord {
  const record = { ...sampleTake('3.1'), id: `take ${n}`, position: seat(n), gainDb };
  if (!record.readings) throw new Error('the sample take is read');
  const channels = record.readings.channels.map((one) => ({
    ...one,
    levelDb: -30,
    bass: pureBass(0, gain),
  }));
  return { ...record, readings: { ...record.readings, channels } };
}

function other(first: TakeRecord, second: TakeRecord) {
  const position = first.position;
  const document = { ...sampleDocument('3.1'), position, takes: [first, second] };
  if (!first.readings) throw new Error('the sample take is read');
  const [seats] = [proposalTerms(document, first.readings, layout, []).options.otherSeats];
  const [channel] = seats?.[0]?.readings.channels ?? [];
  return { re: channel?.bass?.re[0] ?? Number.NaN, levelDb: channel?.levelDb ?? Number.NaN };
}

describe('the readings of another seat', () => {
  it('are as they would be with the gain of the seat in hand', () => {
    // By hand: 6 dB more are a factor of 10^(6/20) = 1.9953.
    const { re, levelDb } = other(take(1, 1, -20), take(2, 1, -26));
    expectClose(re, 1.9953, 1e-3);
    expectClose(levelDb, -24, 1e-9);
    expectClose(other(take(1, 1, -26), take(2, 1, -20)).re, 1 / 1.9953, 1e-3);
  });

  it('stay as they are with the same gain, and where a gain is not known', () => {
    expect(other(take(1, 1, -20), take(2, 0.5, -20)).re).toBe(0.5);
    expect(other(take(1, 1, undefined), take(2, 0.5, -20)).re).toBe(0.5);
  });
});
