import { describe, expect, it } from 'vitest';
import { readTake } from '../../../src/reading/read-take';
import { practiceRig } from '../../../src/rig/practice';
import { layoutFromName } from '../../../src/system/layout';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { runOn } from './run-on';

describe('noise in the practice room', () => {
  it('reads level, response and roll-off of a sub as a sweep does', async () => {
    const layout = layoutFromName('2.1');
    if (isTrouble(layout)) throw new Error(layout.sentence);
    const rig = practiceRig({ layout, seed: 7, lineSpeed: 60 });
    const request = { channel: 'Sub 1', lowHz: 10, gainDb: -6, averagingSeconds: 12 } as const;
    const { last } = await runOn(rig, request, ({ complete }) => complete, { isSub: true });
    const schedule = scheduleTake(layout, { sweepSeconds: 2.7 });
    if (isTrouble(schedule)) throw new Error(schedule.sentence);
    const capture = await rig.play(schedule, { signal: new AbortController().signal });
    if (isTrouble(capture)) throw new Error(capture.sentence);
    const options = { temperatureCelsius: 20, referenceDistanceMetres: 3, simulated: true };
    const readings = await readTake(schedule, capture, options);
    if (isTrouble(readings)) throw new Error(readings.sentence);
    const swept = readings.channels.find(({ channel }) => channel === 'Sub 1');
    const heard = last?.reading;
    expect(heard?.simulated).toBe(true);
    // A sweep's level is re the peak it was played with.
    expectClose((heard?.levelDb ?? 0) + schedule.peakDb, swept?.levelDb, 0.05);
    expectClose(heard?.rolloff?.f6Hz.median, swept?.rolloff?.f6Hz.median, 0.5);
    const curve = swept?.curves?.response;
    for (const [n, hz] of (heard?.response?.hz ?? []).entries()) {
      if (hz < 30 || hz > 200) continue;
      const beside = curve?.hz.findIndex((one) => Math.abs(one / hz - 1) < 1e-6) ?? -1;
      expectClose(heard?.response?.db[n], curve?.db[beside], 0.2);
    }
  });
});
