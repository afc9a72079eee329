import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../dsp/signal/random';
import { capturesOf } from '../../../../src/session/file/session-file';
import { sessionSchema } from '../../../../src/session/store-schema';
import { makeBench, settled } from '../make-bench';
import { toldReadings } from '../told-readings';
import { damages } from './damage';

const each = 18;

/** How the files fared, counted over all of them. */
const fared = { refused: 0, opened: 0 };

/** A bench with a session of its own that was changed and saved. */
async function benchAtWork() {
  const made = makeBench({
    read: (schedule) => Promise.resolve(toldReadings(schedule)),
  });
  made.bench.change('Rename session', (document) => ({ ...document, name: 'Mine' }));
  made.held.captures.set('my sound', new Float32Array([0.5]));
  await settled();
  return made;
}

/** Numbers anywhere in a value that are none. */
function strayNumbers(value: unknown): number[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(strayNumbers);
}

describe('a damaged session file', () => {
  for (const [index, [what, damage]] of Object.entries(damages).entries()) {
    it(`with ${what} is refused with a sentence or opened whole, and one's own stays`, async () => {
      const { bench, held } = await benchAtWork();
      const mine = bench.state.document;
      for (let seed = 1; seed <= each; seed++) {
        const bytes = damage(seededRandom(1000 * index + seed));
        await bench.sessions.openFile(new File([bytes], 'session.zip'));
        const { document, trouble } = bench.state;
        expect(held.sessions.get(mine.id)).toEqual(mine);
        expect(held.captures.get('my sound')).toEqual(new Float32Array([0.5]));
        if (document === mine) {
          expect(trouble?.sentence).toMatch(/^(This|Opening) .{20,}\.$/s);
          expect(trouble?.sentence).not.toMatch(/NaN|undefined|\[object/);
          expect(held.sessions.size).toBe(1);
          expect(held.captures.size).toBe(1);
          fared.refused++;
          continue;
        }
        fared.opened++;
        expect(strayNumbers([bench.state.readings, bench.state.proposal])).toEqual([]);
        expect(v.is(sessionSchema, document)).toBe(true);
        expect(capturesOf(document).every(({ id }) => held.captures.has(id))).toBe(true);
        // Takes that came unread are read first.
        await settled();
        await bench.sessions.open(mine.id);
        expect(bench.state.document).toEqual(mine);
        await bench.sessions.delete(document.id);
        await bench.sessions.remove(document.id);
        held.captures.set('my sound', new Float32Array([0.5]));
        expect(held.sessions.size).toBe(1);
      }
    });
  }

  it('was tried in more than two hundred ways, some of which do no harm', () => {
    expect(fared.refused + fared.opened).toBe(each * Object.keys(damages).length);
    expect(fared.refused).toBeGreaterThan(150);
    expect(fared.opened).toBeGreaterThan(10);
  });
});
