import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCalibration } from '../../../src/microphone/parse-calibration';
import { isTrouble } from '../../../src/trouble';

interface Style {
  readonly separator: string;
  readonly decimal: string;
  /** Null: as many as the number needs. */
  readonly decimals: number | null;
  readonly end: string;
  readonly falls: boolean;
  readonly head: string;
}

/** A curve of 5 to 9 points over two octaves and more, to a hundredth. */
const curve = fc
  .tuple(
    fc.integer({ min: 100, max: 4000 }),
    fc.array(fc.record({ ratio: fc.integer({ min: 150, max: 250 }), cents: hundredths(40) }), {
      minLength: 5,
      maxLength: 9,
    }),
    fc.array(hundredths(360), { minLength: 12, maxLength: 12 }),
  )
  .map(([start, steps, degrees]) => {
    let hz = start;
    return steps.map(({ ratio, cents }, i) => {
      const point = { hz: hz / 100, db: cents, degrees: degrees[i] ?? 0 };
      hz = Math.round((hz * ratio) / 100);
      return point;
    });
  });

const style: fc.Arbitrary<Style> = fc.record({
  separator: fc.constantFrom(' ', '   ', '\t', ';', ' ; ', ',', ', ', ',\t'),
  decimal: fc.constantFrom('.', ','),
  decimals: fc.constantFrom(2, 3, null),
  end: fc.constantFrom('\n', '\r\n', '\r'),
  falls: fc.boolean(),
  head: fc.constantFrom('', '# made up\n', 'Hz dB\n', '* 1\n* 2\n\n', '"Sensitivity -30 dB"\n'),
});

function hundredths(most: number): fc.Arbitrary<number> {
  return fc.integer({ min: -100 * most, max: 100 * most }).map((value) => value / 100);
}

function write(rows: readonly (readonly number[])[], how: Style): Uint8Array {
  const say = (value: number): string =>
    (how.decimals === null ? String(value) : value.toFixed(how.decimals)).replace('.', how.decimal);
  const lines = rows.map((row) => row.map(say).join(how.separator));
  if (how.falls) lines.reverse();
  return new TextEncoder().encode(how.head + lines.join(how.end));
}

describe('parseCalibration', () => {
  it('reads back what was written in any usual style, or says that it can be read in two ways', () => {
    let refused = 0;
    let read = 0;
    const property = fc.property(curve, style, fc.boolean(), (points, how, withPhase) => {
      const wide = (points.at(-1)?.hz ?? 0) >= 4 * (points[0]?.hz ?? 1);
      fc.pre(wide);
      const rows = points.map(({ hz, db, degrees }) => (withPhase ? [hz, db, degrees] : [hz, db]));
      const parsed = parseCalibration(write(rows, how), 'x');
      if (isTrouble(parsed)) {
        // Only commas in both roles, with numbers of uneven length, may be refused.
        expect([how.separator, how.decimal, parsed.sentence]).toEqual([',', ',', parsed.sentence]);
        expect(how.decimals).toBeNull();
        refused++;
        return;
      }
      read++;
      expect(parsed.hz).toEqual(points.map((point) => point.hz));
      expect(parsed.db.map((value) => value + 0)).toEqual(points.map((point) => point.db + 0));
      const degrees = parsed.phaseDegrees?.map((value) => value + 0) ?? null;
      expect(degrees).toEqual(withPhase ? points.map((point) => point.degrees + 0) : null);
    });
    fc.assert(property, { numRuns: 3000, seed: 21 });
    expect(read).toBeGreaterThan(2000);
    expect(refused).toBeGreaterThan(0);
  });
});
