import { describe, expect, it } from 'vitest';
import { sealedResponse } from '../../../dsp/rolloff/box-response';
import { crossingHz } from '../../../dsp/rolloff/crossing';
import { fitRolloff, isRefusal } from '../../../dsp/rolloff/fit-rolloff';
import { rolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { seededRandom } from '../../../dsp/signal/random';
import { makeModalRoom, modalResponse } from './modal-room';

describe('fitRolloff', () => {
  it('covers the truth of a closed box at a seat and brackets f10', () => {
    const random = seededRandom(4);
    const room = makeModalRoom([5.1, 4.2, 2.5], [0.6, 0.3], random);
    const speaker = sealedResponse(60, 0.8);
    const ir = modalResponse(room, [0.6, 1.1, 0.9], [3.4, 2.3, 1.2], speaker);
    const fit = fitRolloff(rolloffBands(ir, null), { place: 'room' });
    if (isRefusal(fit)) throw new Error(fit.refused);
    const truth = crossingHz(speaker, 10) ?? 0;
    expect(fit.f10Hz.low).toBeLessThan(truth);
    expect(fit.f10Hz.high).toBeGreaterThan(truth);
    expect(fit.f6Upper80Hz).toBeGreaterThan(fit.f6Hz.median);
  });
});
