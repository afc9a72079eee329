import type { ChannelLabel } from '../system/channel';
import { metresBetween, type SpeakerOffset } from '../system/speaker-offset';

/** What a speaker should sound like at the stops of a walk, but for its own gain and delay. */
export interface ExpectedSound {
  /** Level at each stop, dB re the direct sound at 1 m, in the middle and in the bass. */
  readonly levelDb: readonly number[];
  readonly lowDb: readonly number[];
  readonly seconds: readonly number[];
}

/** The microphone is held so near; echo adds so much everywhere, re the direct sound at 1 m. */
const heldMetres = 0.27;
const echoPower = { middle: 10 ** -0.5, low: 1 } as const;
const metresPerSecond = 343;

/** The sound of the speakers `from` (two: one channel on both, the second `gainDb` louder). */
export function expectSound(
  stops: readonly ChannelLabel[],
  places: ReadonlyMap<ChannelLabel, SpeakerOffset>,
  from: readonly ChannelLabel[],
  gainDb = 0,
): ExpectedSound {
  const ways = stops.map((stop) => from.map((label) => wayTo(stop, label, places)));
  const levels = (echo: number): number[] =>
    ways.map((metres) => {
      const power = metres.reduce(
        (sum, one, at) => sum + 10 ** ((at * gainDb) / 10) * (1 / one ** 2 + echo),
        0,
      );
      return 10 * Math.log10(power);
    });
  return {
    levelDb: levels(echoPower.middle),
    lowDb: levels(echoPower.low),
    seconds: ways.map((metres) => Math.min(...metres) / metresPerSecond),
  };
}

/** A source that stands near none of so many stops. */
export function expectFar(stops: number): ExpectedSound {
  const flat = new Array<number>(stops).fill(0);
  return { levelDb: flat, lowDb: flat, seconds: flat };
}

function wayTo(
  stop: ChannelLabel,
  speaker: ChannelLabel,
  places: ReadonlyMap<ChannelLabel, SpeakerOffset>,
): number {
  if (stop === speaker) return heldMetres;
  const [a, b] = [places.get(stop), places.get(speaker)];
  if (!a || !b) throw new RangeError(`no place for ${stop} or ${speaker}`);
  return Math.max(heldMetres, metresBetween(a, b));
}
