import type { RoomPreset } from '../../dsp/room/draw-room';
import { layoutFromName } from '../../src/system/layout';
import { scheduleTake } from '../../src/take/schedule-take';
import { isTrouble } from '../../src/trouble';
import type { RoomFigures } from './figures';
import { measureRoom } from './measure-room';

/** One room to measure. */
export interface RoomOrder {
  readonly layout: string;
  readonly preset: RoomPreset;
  readonly seed: number;
}

/** What a child process answers. */
export type RoomAnswer =
  { readonly figures: RoomFigures } | { readonly failure: string; readonly order: RoomOrder };

async function answer(order: RoomOrder): Promise<RoomAnswer> {
  const layout = layoutFromName(order.layout);
  if (isTrouble(layout)) return { failure: layout.sentence, order };
  try {
    const schedule = scheduleTake(layout);
    return { figures: await measureRoom(layout, schedule, order.preset, order.seed) };
  } catch (error) {
    return {
      failure: error instanceof Error ? (error.stack ?? error.message) : String(error),
      order,
    };
  }
}

process.on('message', (order: RoomOrder) => {
  void answer(order).then((result) => process.send?.(result));
});
