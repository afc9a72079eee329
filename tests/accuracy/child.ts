import type { RoomPreset } from '../../dsp/room/draw-room';
import { layoutFromName } from '../../src/system/layout';
import { scheduleTake } from '../../src/take/schedule-take';
import { isTrouble } from '../../src/trouble';
import { briefLayout, briefQuestions, briefSchedule, subLayout, subQuestions } from './brief-take';
import type { RoomFigures, SubLevelFigures } from './figures';
import { measureRoom } from './measure-room';
import { measureRolloffRooms } from './rolloff';
import type { RolloffCase } from './rolloff-measure';
import { measureBass, type BassFigures } from './bass-measure';
import { measureDecay, type DecayCase } from './decay-measure';
import { measureDistortion, type DistortionFigures } from './distortion-measure';

/** One room to measure: a whole or a brief take in it, many roll-off fits, or one thing more. */
export interface Order {
  readonly what: 'take' | 'brief take' | 'sub level' | 'roll-off' | 'bass' | 'decay' | 'distortion';
  readonly layout: string;
  readonly preset: RoomPreset;
  readonly seed: number;
}

/** What one room gave. */
export type Result =
  | { readonly what: 'take'; readonly figures: RoomFigures }
  | {
      readonly what: 'sub level';
      readonly preset: RoomPreset;
      readonly figures: SubLevelFigures;
    }
  | { readonly what: 'roll-off'; readonly preset: RoomPreset; readonly cases: RolloffCase[] }
  | { readonly what: 'bass'; readonly preset: RoomPreset; readonly figures: BassFigures }
  | { readonly what: 'decay'; readonly preset: RoomPreset; readonly cases: DecayCase[] }
  | {
      readonly what: 'distortion';
      readonly preset: RoomPreset;
      readonly figures: DistortionFigures;
    };

/** What a child process answers. */
export type Answer = { readonly result: Result } | { readonly failure: string };

async function measure({ what, layout: name, preset, seed }: Order): Promise<Result> {
  if (what === 'roll-off') return { what, preset, cases: measureRolloffRooms(preset, 1, seed) };
  if (what === 'bass') return { what, preset, figures: measureBass(preset, seed) };
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  if (what === 'decay') return { what, preset, cases: measureDecay(layout, preset, seed) };
  if (what === 'distortion') {
    return { what, preset, figures: measureDistortion(layout, preset, seed) };
  }
  if (what === 'take') {
    return { what, figures: await measureRoom(layout, scheduleTake(layout), preset, seed) };
  }
  if (what === 'sub level') {
    const pair = subLayout(layout);
    const schedule = briefSchedule(pair, subQuestions);
    const { subLevels, subLevelsInNoise } = await measureRoom(
      pair,
      schedule,
      preset,
      seed,
      subQuestions,
    );
    return { what, preset, figures: { subLevels, subLevelsInNoise } };
  }
  const brief = briefLayout(layout, seed);
  const questions = briefQuestions(seed);
  const schedule = briefSchedule(brief, questions);
  return { what: 'take', figures: await measureRoom(brief, schedule, preset, seed, questions) };
}

async function answer(order: Order): Promise<Answer> {
  try {
    return { result: await measure(order) };
  } catch (error) {
    return { failure: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

process.on('message', (order: Order) => {
  void answer(order).then((result) => process.send?.(result));
});
