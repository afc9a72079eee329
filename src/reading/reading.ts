import type { HarmonicReading } from '../../dsp/distortion/harmonic-reading';
import type { ChannelLabel } from '../system/channel';
import type { SettingsInForce } from '../system/declared-settings';

/** A value with its 90 % interval. */
export interface Estimate {
  readonly median: number;
  readonly interval: readonly [number, number];
}

export interface Fault {
  readonly kind:
    | 'lost'
    | 'repeated'
    | 'clipped'
    | 'silent'
    /** The microphone's gain changed during the take. */
    | 'gain'
    /** Sound that was not the take's: a slammed door, a lorry, mains hum, speech, or else. */
    | 'bang'
    | 'rumble'
    | 'hum'
    | 'voice'
    | 'noisy';
  readonly sentence: string;
}

export interface ClockFault {
  readonly kind: 'lost' | 'repeated';
  /** Frames of the capture clock, not necessarily whole. */
  readonly samples: number;
  /** The segment it fell in; null when outside all segments. */
  readonly channel: ChannelLabel | null;
}

export interface RolloffReading {
  readonly f3Hz: Estimate;
  readonly f6Hz: Estimate;
  readonly f10Hz: Estimate;
  /** 85 % quantile of f6, which the measured crossover rule uses. */
  readonly f6UpperHz: number;
  readonly box: {
    readonly kind: 'closed' | 'vented' | 'cannot tell';
    readonly probability: number;
  };
}

/**
 * The bass of one speaker at one place, plain numbers: what a roll-off is read from together with
 * that of other seats and of speakers of the same model. Bands at 15·2^(k/12) Hz, k = 0 … 60.
 */
export interface BassBands {
  /** Power without the noise's, re the 180 to 500 Hz mean; may be below 0 in noise. */
  readonly power: readonly number[];
  readonly noisePower: readonly number[];
  /** Independent spectral lines averaged in the band. */
  readonly lines: readonly number[];
  /** The same through decaying windows; see dsp/rolloff/early-part. */
  readonly early: readonly {
    readonly seconds: number;
    readonly power: readonly number[];
    readonly noisePower: readonly number[];
  }[];
}

/** Harmonic distortion of a channel at the level it was played at, or why there is none. */
export type DistortionReading =
  | ({ readonly kind: 'curves' } & HarmonicReading)
  | { readonly kind: 'cannot tell'; readonly sentence: string };

/** Complex bass of a channel; the frequencies are those of bassGrid() of dsp/bass/transfer. */
export interface BassReading {
  /** Re full scale, 4 digits. Time zero is the arrival of the reference speaker in the same take. */
  readonly re: readonly number[];
  readonly im: readonly number[];
}

/** Curves for the screen; all arrays of one curve have one length. */
export interface ReadingCurves {
  /** 1/24-octave response re 500 to 2000 Hz (mains) or 40 to 80 Hz (subs), and the noise under it. */
  readonly response: { readonly hz: number[]; readonly db: number[]; readonly noiseDb: number[] };
  /** Fitted roll-off with its 90 % band; null when there is no fit. */
  readonly fit: {
    readonly hz: number[];
    readonly db: number[];
    readonly low: number[];
    readonly high: number[];
  } | null;
  /** Envelope 0 … 1 of the impulse response; seconds relative to the reference's arrival. */
  readonly envelope: {
    readonly startSeconds: number;
    readonly stepSeconds: number;
    readonly level: number[];
  };
}

/** Signal over noise in octave bands, dB. */
export interface BandMargins {
  /** Exact midpoints (IEC 61260-1), rising. */
  readonly hz: number[];
  readonly marginDb: number[];
}

/** The room's noise in octave bands. */
export interface NoiseFloorReading {
  /** Exact midpoints (IEC 61260-1), rising. */
  readonly hz: number[];
  /** Rms re full scale, without the microphone's response. */
  readonly db: number[];
}

/** Everything read of one channel at one position. A null number comes with a sentence in notes. */
export interface ChannelReading {
  readonly channel: ChannelLabel;
  /** Relative to the reference speaker's arrival. */
  readonly arrivalSeconds: number | null;
  readonly arrivalInterval: readonly [number, number] | null;
  readonly distanceMetres: number | null;
  readonly distanceInterval: readonly [number, number] | null;
  /** The path over the ceiling of a bounced height, else null. */
  readonly ceilingPathMetres: number | null;
  /** In-room level, dB re full scale: 500 to 2000 Hz, subs 30 to 80 Hz. */
  readonly levelDb: number | null;
  /** Of 90 %, dB; null without a level or where no noise is known; left out in older sessions. */
  readonly levelInterval?: readonly [number, number] | null | undefined;
  readonly polarity: 'normal' | 'inverted' | 'cannot tell';
  readonly rolloff: RolloffReading | null;
  /** Left out where nothing was read or a crossover was in force, and in older sessions. */
  readonly bassBands?: BassBands | undefined;
  /** Signal over noise, dB, in the band that decides the roll-off (40 to 80 Hz). */
  readonly bassMarginDb: number | null;
  /** Impulse-response peak over its pre-arrival noise, dB. */
  readonly peakToNoiseDb: number | null;
  /**
   * When the response, full band and bass, has fallen 45 dB below its peak or into the noise,
   * seconds after the moment its sweep would arrive without delay; null when it was not heard to.
   */
  readonly decaySeconds: number | null;
  /** Left out or null where it cannot be told beside the other channels, and in older sessions. */
  readonly bass?: BassReading | null | undefined;
  /** Levels as captured, 0.01 dB; left out where nothing was read, and in older sessions. */
  readonly distortion?: DistortionReading | undefined;
  /** What spoils this reading; all of them are worth repeating the segment for. */
  readonly faults: readonly Fault[];
  /** Signal over noise in octave bands; left out or null where no noise is known. */
  readonly margins?: BandMargins | null | undefined;
  /** Sentences: why a number is missing or to be distrusted, and what would settle it. */
  readonly notes: readonly string[];
  readonly curves: ReadingCurves | null;
}

export interface ClockReading {
  /** captured sample = played sample × (1 + skewPpm·10⁻⁶). */
  readonly skewPpm: number;
  readonly skewInterval: readonly [number, number];
  readonly faults: readonly ClockFault[];
}

export interface CaptureReading {
  readonly clipped: readonly ChannelLabel[];
  /** dBFS, whole band, from the take's silence. */
  readonly noiseFloorDb: number;
  /** The same silence in octave bands; left out or null when the capture holds too little of it. */
  readonly noise?: NoiseFloorReading | null | undefined;
  readonly peakDb: number;
}

/** A take that went into joined readings. */
export interface JoinedTake {
  readonly takeId: string;
  /** Speakers whose readings are this take's; none when a later take replaced them all. */
  readonly channels: readonly ChannelLabel[];
}

/** All that is read from one take, or from several of one position; what `leadline read` prints. */
export interface Readings {
  readonly format: 'leadline-readings';
  readonly version: 1;
  readonly layout: string;
  readonly takeId: string;
  readonly reference: ChannelLabel;
  /** By the loopback where `absolute`, else by tape. */
  readonly referenceDistanceMetres: number;
  /** Whether an electrical loopback gave the time the sound left, so that no tape was needed. */
  readonly absolute: boolean;
  readonly temperatureCelsius: number;
  readonly simulated: boolean;
  readonly clock: ClockReading;
  readonly capture: CaptureReading;
  readonly channels: readonly ChannelReading[];
  /** Sentences on the whole: the microphone's calibration, the loopback, a microphone that moved. */
  readonly notes: readonly string[];
  /** The takes these readings were joined from, oldest first; empty for those of one take. */
  readonly joined: readonly JoinedTake[];
  /** What was taken out as in force in the processor; left out: there was no processor. */
  readonly inForce?: SettingsInForce | undefined;
}
