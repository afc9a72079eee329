import type { RoomSpec, SpeakerSpec } from './room-spec';
import { roomResponse } from './room-response';
import { soundSpeed } from './sound-speed';
import { speakerResponse } from './speaker-response';

/** What is true of one speaker of the loop's room, from its definition alone. */
export interface SpeakerTruth {
  readonly output: number;
  /** Direct path, metres. */
  readonly pathMetres: number;
  /** Path and the speaker's own delay as one time, seconds. */
  readonly arrivalSeconds: number;
  readonly polarity: 'normal' | 'inverted';
  readonly f3Hz: number;
  readonly f6Hz: number;
  readonly f10Hz: number;
  /** Level of pink noise behind the response, dB re the stimulus: 500 to 2000 Hz, subs 30 to 80. */
  readonly levelDb: number;
}

/** The truth of every speaker of a room, in the order of its list. */
export function roomTruth(room: RoomSpec): SpeakerTruth[] {
  return room.speakers.map((speaker) => {
    const pathMetres = Math.hypot(
      ...speaker.position.map((coordinate, axis) => coordinate - (room.microphone[axis] ?? 0)),
    );
    return {
      output: speaker.output,
      pathMetres,
      arrivalSeconds: pathMetres / soundSpeed(room.celsius) + (speaker.delaySeconds ?? 0),
      polarity: speaker.inverted === true ? 'inverted' : 'normal',
      f3Hz: rolloffHz(speaker, 3),
      f6Hz: rolloffHz(speaker, 6),
      f10Hz: rolloffHz(speaker, 10),
      levelDb: pinkLevelDb(room, speaker),
    };
  });
}

/** Frequency below the passband where the box is `dropDb` down, by bisection. */
function rolloffHz({ box }: SpeakerSpec, dropDb: number): number {
  let low = 1;
  let high = 1000;
  const wanted = 10 ** (-dropDb / 20);
  for (let step = 0; step < 60; step++) {
    const middle = Math.sqrt(low * high);
    const [re, im] = speakerResponse({ box }, middle);
    if (Math.hypot(re, im) < wanted) low = middle;
    else high = middle;
  }
  return low;
}

/** Mean of |H|² over log frequency, by the trapezium rule on the response as the loop plays it. */
function pinkLevelDb(room: RoomSpec, speaker: SpeakerSpec): number {
  const response = roomResponse(room, speaker);
  const [lowHz, highHz] = speaker.lowPassHz === undefined ? [500, 2000] : [30, 80];
  const steps = 2000;
  let sum = 0;
  for (let step = 0; step <= steps; step++) {
    const hz = lowHz * (highHz / lowHz) ** (step / steps);
    sum += powerAt(response, hz / room.sampleRate) * (step === 0 || step === steps ? 0.5 : 1);
  }
  return 10 * Math.log10(sum / steps);
}

/** |H|² at a frequency in cycles a sample, by Goertzel's recurrence. */
function powerAt(signal: Float64Array, cycles: number): number {
  const twiceCos = 2 * Math.cos(2 * Math.PI * cycles);
  let [one, two] = [0, 0];
  for (const value of signal) [one, two] = [value + twiceCos * one - two, one];
  return one * one + two * two - twiceCos * one * two;
}
