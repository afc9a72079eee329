import type { RoomSpec, SpeakerSpec } from './room-spec';
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
}

/** Speed of sound, m/s (ISO 9613-1). */
export function soundSpeed(celsius: number): number {
  return 343.2 * Math.sqrt((celsius + 273.15) / 293.15);
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
