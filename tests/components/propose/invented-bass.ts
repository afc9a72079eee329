// Invented bass for the tests of the screens: closed forms, nothing measured.
import { bassGrid } from '../../../dsp/bass/transfer';
import type { BassReading, ChannelReading, Readings } from '../../../src/reading/reading';
import type { Layout } from '../../../src/system/channel';
import { inventedReadings } from '../fixtures';

/**
 * A second-order high-pass s²/(s² + √2 s + 1) at a cutoff, so much later than the reference, plus
 * one echo of it at a third of its size.
 */
function inventedBass(cutoffHz: number, seconds: number, echoSeconds: number): BassReading {
  const hz = Array.from(bassGrid());
  const values = hz.map((f) => {
    const w = f / cutoffHz;
    const [real, imaginary] = [1 - w * w, Math.SQRT2 * w];
    const size = real * real + imaginary * imaginary;
    const [re, im] = [(-w * w * real) / size, (w * w * imaginary) / size];
    const turn = (after: number) => -2 * Math.PI * f * after;
    const [first, second] = [turn(seconds), turn(seconds + echoSeconds)];
    const path = [
      Math.cos(first) + Math.cos(second) / 3,
      Math.sin(first) + Math.sin(second) / 3,
    ] as const;
    return { re: re * path[0] - im * path[1], im: re * path[1] + im * path[0] };
  });
  return { re: values.map(({ re }) => re / 50), im: values.map(({ im }) => im / 50) };
}

function withBass(reading: ChannelReading, index: number, seat: number): ChannelReading {
  const cutoff = reading.rolloff?.f3Hz.median ?? 60;
  const seconds = (reading.arrivalSeconds ?? 0.002) + 0.0004 * seat * (index % 3);
  return { ...reading, bass: inventedBass(cutoff, seconds, 0.006 + 0.0007 * index + 0.002 * seat) };
}

/** Readings of a layout with the bass of every channel, at a seat counted from 0. */
export function bassReadings(layout: Layout, seat = 0): Readings {
  const readings = inventedReadings(layout, { takeId: `invented ${seat}` });
  return {
    ...readings,
    channels: readings.channels.map((one, index) => withBass(one, index, seat)),
  };
}
