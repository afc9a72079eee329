import type { GroupId } from '../system/channel';

/** What the tuner decides beside crossover steps. */
export interface OwnChoices {
  /** Groups that run full range by the tuner's wish. */
  readonly fullRange: readonly GroupId[];
  /** How much louder the subs shall be than level with the mains, dB. */
  readonly bassPreferenceDb: number;
  /** Null: as proposed. */
  readonly subLowPassHz: number | null;
  /** 'off' is a choice of its own; null: as proposed. */
  readonly lowCutHz: number | 'off' | null;
  /** All subs later than proposed, seconds. */
  readonly subsLaterSeconds: number;
  /** All subs turned over against the proposed polarity. */
  readonly subsTurned: boolean;
  /** Parametric sections a channel may have; 0 keeps the equaliser off. */
  readonly equaliserBands: number;
}

/** A tuner who keeps to the proposal. */
export const noChoices: OwnChoices = {
  fullRange: [],
  bassPreferenceDb: 0,
  subLowPassHz: null,
  lowCutHz: null,
  subsLaterSeconds: 0,
  subsTurned: false,
  equaliserBands: 0,
};

/** All choices, crossover steps included. */
export interface ProposalChoices extends OwnChoices {
  readonly crossoverHz: Readonly<Partial<Record<GroupId, number>>>;
}

/** A tuner who keeps to everything. */
export const nothingChosen: ProposalChoices = { ...noChoices, crossoverHz: {} };
