import type { BassDecayPicture } from '../../dsp/decay/bass-decay';
import type { DecayReading } from '../../dsp/decay/read-decay-bands';
import type { Mode } from '../../dsp/decay/read-modes';
import type { SchroederReading } from '../../dsp/decay/schroeder-frequency';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { SmoothingKind } from '../../dsp/response/smoothing-kind';
import type { Trouble } from '../trouble';
import type { ChannelLabel } from '../system/channel';

/** One speaker's sweeps in one take. */
export interface SoundSource {
  readonly takeId: string;
  readonly channel: ChannelLabel;
}

/** How much of a response is looked at. */
export type ResponseWindow =
  | { readonly kind: 'whole' }
  /** From the arrival on, milliseconds. */
  | { readonly kind: 'gate'; readonly milliseconds: number }
  /** From the arrival on, periods of each frequency. */
  | { readonly kind: 'cycles'; readonly cycles: number };

/** Answers questions about the sound of a session's takes, one at a time, beside the screen. */
export interface Inspector {
  ask(request: InspectRequest): Promise<InspectAnswer | Trouble>;
  /** Ends it; what was asked and not answered yet gives a Trouble of kind 'stopped'. */
  close(): void;
}

/** What can be asked of the sound of takes. */
export type InspectRequest =
  | {
      readonly kind: 'responses';
      readonly sources: readonly SoundSource[];
      readonly smoothing: SmoothingKind;
      readonly window: ResponseWindow;
    }
  | { readonly kind: 'phase'; readonly sources: readonly SoundSource[] }
  | { readonly kind: 'time'; readonly sources: readonly SoundSource[] }
  | {
      readonly kind: 'decay';
      readonly source: SoundSource;
      /** Of the room, m³; null when it is not known. */
      readonly volume: number | null;
    }
  | { readonly kind: 'bass'; readonly source: SoundSource }
  | { readonly kind: 'impulse'; readonly source: SoundSource };

/** Answers to them; null stands where noise hides a value. All arrays of a curve have one length. */
export type InspectAnswer =
  ResponsesAnswer | PhaseAnswer | TimeAnswer | DecayAnswer | BassAnswer | ImpulseAnswer;

export interface ResponsesAnswer {
  readonly kind: 'responses';
  readonly hz: readonly number[];
  readonly curves: readonly ResponseCurve[];
}

export interface ResponseCurve {
  readonly source: SoundSource;
  /** Of what was captured re what was played. */
  readonly power: ArrayLike<number>;
  /** The noise in it; null where none is known. */
  readonly noisePower: ArrayLike<number> | null;
  /** Below this the window tells nothing, Hz; null when the whole response is looked at. */
  readonly fromHz: number | null;
}

export interface PhaseAnswer {
  readonly kind: 'phase';
  readonly hz: readonly number[];
  readonly curves: readonly {
    readonly source: SoundSource;
    /** After the speaker's arrival, seconds. */
    readonly groupDelay: readonly (number | null)[];
    /** Over the minimum phase of the same response, without the arrival, degrees. */
    readonly excessPhase: readonly (number | null)[];
  }[];
}

/** Seconds count from the speaker's arrival. */
export interface TimeAnswer {
  readonly kind: 'time';
  readonly curves: readonly {
    readonly source: SoundSource;
    readonly step: { readonly seconds: readonly number[]; readonly level: readonly number[] };
    readonly energy: { readonly seconds: readonly number[]; readonly db: readonly number[] };
  }[];
}

export interface DecayAnswer extends DecayReading {
  readonly kind: 'decay';
  readonly source: SoundSource;
  /** Where the room's modes run together, or what is missing to tell it. */
  readonly schroeder: SchroederReading;
}

/** How the bass fades, and its modes one by one. */
export interface BassAnswer {
  readonly kind: 'bass';
  readonly source: SoundSource;
  readonly picture: BassDecayPicture;
  readonly modes: readonly Mode[];
}

export interface ImpulseAnswer {
  readonly kind: 'impulse';
  readonly source: SoundSource;
  readonly ir: ImpulseResponse;
  /** After zero delay; null when no arrival was found. */
  readonly arrivalSeconds: number | null;
}
