/** How the app stands with its copy in this browser. */
export interface UpdateState {
  /** Whether the app is kept here and opens without the network. */
  readonly kept: boolean;
  /** Whether a newer version than the one on screen is here, whole. */
  readonly ready: boolean;
}

/** Follows the app's copy in this browser and the newer versions that come. */
export interface Updates {
  readonly state: UpdateState;
  /** Calls back after every change; returns the way to unsubscribe. */
  subscribe(listener: () => void): () => void;
  /** Lets the newer version take over and loads the page again; does nothing where there is none. */
  takeOver(): void;
}
