import type { ChannelLabel } from '../src/system/channel';
import type { StageId } from './shell/stages';

declare global {
  /** What an element asks of the shell; both events bubble and cross shadow roots. */
  interface HTMLElementEventMap {
    /** A speaker was picked; null picks none. */
    'll-select': CustomEvent<ChannelLabel | null>;
    /** Another stage is wanted. */
    'll-go': CustomEvent<StageId>;
  }
}

/** Asks the shell to select a speaker everywhere. */
export function askToSelect(from: HTMLElement, label: ChannelLabel | null): void {
  from.dispatchEvent(
    new CustomEvent('ll-select', { detail: label, bubbles: true, composed: true }),
  );
}

/** Asks the shell to show a stage. */
export function askToGo(from: HTMLElement, stage: StageId): void {
  from.dispatchEvent(new CustomEvent('ll-go', { detail: stage, bubbles: true, composed: true }));
}
