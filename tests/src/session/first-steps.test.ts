import { afterEach, describe, expect, it } from 'vitest';
import { setLocale } from '../../../src/locale/locale-in-force';
import { plainLocale } from '../../../src/locale/locale';
import { abilitiesOf } from '../../../src/proposal/abilities';
import { checkProcessor } from '../../../src/proposal/check-processor';
import { newSession } from '../../../src/session/new-session';
import { expectClose } from '../../close';

afterEach(() => setLocale(plainLocale));

describe('a session that begins without a processor sheet', () => {
  it('takes distances in metres, in hundredths', () => {
    const { processor, sheet } = newSession('1', '2026-01-01T00:00:00.000Z');
    expect(abilitiesOf(processor, sheet)).toMatchObject({
      distanceUnit: 'm',
      distanceStepMetres: 0.01,
    });
  });

  it('takes them in feet, in tenths, where feet are in force', () => {
    setLocale({ ...plainLocale, units: 'imperial' });
    const { processor, sheet } = newSession('1', '2026-01-01T00:00:00.000Z');
    expect(checkProcessor(processor)).toBeNull();
    const { distanceUnit, distanceStepMetres } = abilitiesOf(processor, sheet);
    expect(distanceUnit).toBe('ft');
    // A foot is 0.3048 m by definition (international yard and pound, 1959).
    expectClose(distanceStepMetres, 0.03048, 1e-12);
    setLocale(plainLocale);
    // A processor's unit is its own: what is shown in metres leaves it as it is.
    expect(abilitiesOf(processor, sheet).distanceUnit).toBe('ft');
  });
});
