import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { factorySettings } from '../../src/system/processor-settings';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { drawHouse } from '../loop/draw-house';
import { playThrough, type LoopProcessor } from '../loop/processor/play-through';
import type { HeardOutput } from '../loop/room/heard-output';
import { roomResponse } from '../loop/room/room-response';
import type { RoomSpec } from '../loop/room/room-spec';
import { outputOf } from './live-session';

/** What stands between the computer's outputs and the speakers. */
export type Feed =
  /** Nothing: each output feeds one speaker. */
  'wires' | LoopProcessor;

/** A processor as it comes out of its box. */
export const factory: LoopProcessor = { typed: factorySettings, slips: [] };

/** Output that a processor takes as LFE; without one the first sub is on it, the second beside it. */
export const lfeOutput = 3;
const secondSubOutput = 4;

/** A house of the loop whose speakers are fed as one likes. */
export interface SlipHouse {
  /** What the loop is started with: the room and its first speaker. */
  readonly room: RoomSpec;
  /** What the microphone hears of every output. */
  heard(feed: Feed): HeardOutput[];
  switchTo(speaker: ChannelLabel, state: 'on' | 'off'): void;
  /** Swaps the two wires of a speaker at one end. */
  swapWires(speaker: ChannelLabel): void;
}

/** Draws the house of a seed; every third main is wired the wrong way round in odd ones. */
export function buildSlipHouse(layout: Layout, seed: number, directory: string): SlipHouse {
  const { room, seat, speakers, between } = drawHouse(layout, seed);
  const whole = { ...room, microphone: seat, skewPpm: between(-100, 100) };
  const turned = new Set<ChannelLabel>();
  for (const [at, { label, kind }] of layout.channels.entries()) {
    if (seed % 2 === 1 && kind !== 'sub' && at % 3 === 2) turned.add(label);
  }
  const off = new Set<ChannelLabel>();
  const known = new Map<ChannelLabel, Float64Array>();
  const response = (label: ChannelLabel): Float64Array => {
    const speaker = speakers.get(label);
    if (!speaker) throw new RangeError(`the house has no ${label}`);
    const found = known.get(label) ?? roomResponse(whole, speaker);
    known.set(label, found);
    return turned.has(label) ? found.map((value) => -value) : found;
  };
  const seen = {
    layout,
    sampleRate: room.sampleRate,
    response,
    isOn: (one: ChannelLabel) => !off.has(one),
  };
  const mains = layout.channels.filter(({ kind }) => kind !== 'sub');
  const subs = layout.channels.filter(({ kind }) => kind === 'sub');
  let written = 0;
  const asOutput = (output: number, sound: Float64Array): HeardOutput => {
    const file = path.join(directory, `${seed}-${written++}.f64`);
    writeFileSync(file, new Uint8Array(sound.buffer, sound.byteOffset, sound.byteLength));
    return { output, speakers: [{ response: file, inverted: false }] };
  };
  return {
    room: { ...whole, speakers: [...speakers.values()].slice(0, 1) },
    heard(feed) {
      if (feed === 'wires') {
        return [
          ...mains.map(({ label }) => asOutput(outputOf[label] ?? 0, response(label))),
          ...subs.map(({ label }, at) =>
            asOutput(at === 0 ? lfeOutput : secondSubOutput, response(label)),
          ),
        ];
      }
      return [
        ...mains.map(({ label }) => asOutput(outputOf[label] ?? 0, playThrough(feed, seen, label))),
        asOutput(lfeOutput, playThrough(feed, seen, 'LFE')),
      ];
    },
    switchTo(speaker, state) {
      if (state === 'off') off.add(speaker);
      else off.delete(speaker);
    },
    swapWires(speaker) {
      if (!turned.delete(speaker)) turned.add(speaker);
    },
  };
}
