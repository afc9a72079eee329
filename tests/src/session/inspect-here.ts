import { createAnswerer } from '../../../src/inspect/answer-request';
import { takesOf } from '../../../src/inspect/takes-of';
import type { BenchParts } from '../../../src/session/bench-parts';
import { isTrouble } from '../../../src/trouble';

/** An inspector without a worker. */
export const inspectHere: BenchParts['inspect'] = (load) => {
  const answerer = createAnswerer();
  const known = new Set<string>();
  return {
    async ask(request) {
      for (const takeId of takesOf(request)) {
        if (known.has(takeId)) continue;
        const sound = await load(takeId);
        if (isTrouble(sound)) return sound;
        answerer.add(sound);
        known.add(takeId);
      }
      return answerer.answer(request);
    },
    close: () => undefined,
  };
};
