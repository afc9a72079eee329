import { expect, it } from 'vitest';
import { sealedResponse } from '../../dsp/rolloff/box-response';
import { rolloffBands } from '../../dsp/rolloff/rolloff-bands';
import { seededRandom } from '../../dsp/signal/random';
import { keepBass } from '../../src/reading/kept-bass';
import { readOrder } from '../../src/reading/read-order';
import type { TogetherOrder } from '../../src/reading/rolloff-together';
import { readTogetherInWorker } from '../../src/reading/together-in-worker';
import { makeModalRoom, modalResponse, type Point } from '../dsp/rolloff/modal-room';

const room = makeModalRoom([5, 4, 2.6], [0.4, 0.3], seededRandom(4));
const speaker = sealedResponse(55, 0.8);
const places: readonly Point[] = [
  [0.9, 1, 1],
  [0.9, 3, 1],
];
const heard = places.map((place, index) => ({
  channel: index === 0 ? ('FL' as const) : ('FR' as const),
  seat: 'seat-1',
  bass: keepBass(rolloffBands(modalResponse(room, place, [3.4, 2, 1.15], speaker), null)),
}));
const order: TogetherOrder = { channels: ['FL', 'FR'], isSub: false, sheetF3Hz: null, heard };

it('reads in a worker what is read here, and several orders in their order', async () => {
  const sheet = { ...order, sheetF3Hz: 60 };
  const [plain, told] = await Promise.all([
    readTogetherInWorker(order),
    readTogetherInWorker(sheet),
  ]);
  expect(plain).toEqual(readOrder(order));
  expect(told).toEqual(readOrder(sheet));
  expect(plain).not.toEqual(told);
});

it('says that an order of nothing failed, and reads the next one all the same', async () => {
  const failed = await readTogetherInWorker({ ...order, heard: [] });
  expect(failed.rolloff).toBeNull();
  expect(failed.notes.join()).toMatch(/could not be read together: .*got none/);
  expect((await readTogetherInWorker(order)).rolloff).not.toBeNull();
});
