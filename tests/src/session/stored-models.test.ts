import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { sessionSchema } from '../../../src/session/store-schema';
import { noModelsDeclared, withSameModel, withSheetF3 } from '../../../src/system/speaker-models';
import { sampleDocument, sampleTake } from '../../components/sample-session';
import { inventedBass } from '../reading/told-together';

const session = { ...sampleDocument('5.2.4'), takes: [sampleTake('5.2.4')] };

describe('models in a stored session', () => {
  it('are none where an older session has no such field, and its takes keep their readings', () => {
    const { models, ...older } = session;
    expect(models).toEqual(noModelsDeclared);
    const loaded = v.parse(sessionSchema, older);
    expect(loaded.models).toEqual(noModelsDeclared);
    expect(loaded.takes).toEqual(session.takes);
  });

  it('come back as they were declared, with the bass of the takes', () => {
    const models = withSheetF3(
      withSameModel(noModelsDeclared, 'sides', 'fronts'),
      ['FL', 'FR', 'SiL', 'SiR'],
      62,
    );
    const takes = session.takes.map((take) => ({
      ...take,
      readings: take.readings && {
        ...take.readings,
        channels: take.readings.channels.map((one) => ({ ...one, bassBands: inventedBass() })),
      },
    }));
    const stored = { ...session, models, takes };
    expect(v.parse(sessionSchema, stored)).toEqual(stored);
  });

  it.each([
    ['a sheet below 10 Hz', { sheetF3Hz: { FL: 9 } }, 'models.sheetF3Hz.FL'],
    ['a sheet of a speaker that is none', { sheetF3Hz: { FX: 60 } }, 'models.sheetF3Hz.FX'],
    ['a group that is none', { sameAs: { sides: 'balcony' } }, 'models.sameAs.sides'],
  ])('refuses %s and says where', (_, change, where) => {
    const parsed = v.safeParse(sessionSchema, {
      ...session,
      models: { ...noModelsDeclared, ...change },
    });
    expect(parsed.success).toBe(false);
    expect(parsed.issues?.[0] && v.getDotPath(parsed.issues[0])).toBe(where);
  });
});
