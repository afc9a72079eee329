import type { ChannelLabel } from '../system/channel';
import type { Schedule } from './schedule';

/** How takes are made; what the tuner chooses for the session. */
export interface TakeSettings {
  /** 0.5 to 30. */
  readonly sweepSeconds: number;
  /** Sweeps of each speaker that are averaged, 1 to 8. */
  readonly averages: number;
  /** Silence between two speakers beside the tail, 0 to 10 s. */
  readonly pauseSeconds: number;
  /** Whether the sweeps of different speakers may overlap where the room's decay allows it. */
  readonly overlap: boolean;
  /** How often segments that came out damaged are repeated without being asked, 0 to 3. */
  readonly repeats: number;
}

/** What the outputs of this computer can reach. */
export interface Routing {
  /** Channels the output device has, 1 up. */
  readonly outputs: number;
  /** Output, from 0, of each speaker the tuner placed; several speakers may name one output. */
  readonly routes: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** Output that a processor replays as LFE, 10 dB louder (ITU-R BS.775); null when none is. */
  readonly lfeOutput: number | null;
}

/** A plug to move before a part plays. */
export interface PlugMove {
  /** From 0. */
  readonly output: number;
  readonly from: ChannelLabel | null;
  readonly to: ChannelLabel;
}

/** One unbroken take of a plan; holds the reference speaker's sweep, which joins it to the others. */
export interface TakePart {
  readonly schedule: Schedule;
  readonly routes: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** Empty for the first part. */
  readonly moves: readonly PlugMove[];
  /** Speakers on the same output that must be switched off while this part plays. */
  readonly switchOff: readonly ChannelLabel[];
  readonly switchOn: readonly ChannelLabel[];
  /** Speakers that play along while this part plays, none of which may be off; left out for none. */
  readonly allOn?: readonly ChannelLabel[];
}

/** All takes that one microphone position needs, in order. */
export interface TakePlan {
  readonly parts: readonly TakePart[];
}
