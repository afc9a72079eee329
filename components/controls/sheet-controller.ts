import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Follows which sheet of a stage the address names, and remembers it for the way back. */
export class SheetController<Id extends string> implements ReactiveController {
  private readonly host: ReactiveControllerHost;
  private readonly stage: string;
  private readonly named: (hash: string) => Id | null;

  /** `named` tells the sheet of the stage that a location hash such as #probe/level names. */
  constructor(host: ReactiveControllerHost, stage: string, named: (hash: string) => Id | null) {
    this.host = host;
    this.stage = stage;
    this.named = named;
    host.addController(this);
  }

  /** The sheet named in the address, else the last one shown, else null. */
  get sheet(): Id | null {
    return this.named(location.hash) ?? this.named(`#${this.stage}/${remembered(this.stage)}`);
  }

  hostConnected(): void {
    window.addEventListener('hashchange', this.read);
    this.read();
  }

  hostDisconnected(): void {
    window.removeEventListener('hashchange', this.read);
  }

  private readonly read = (): void => {
    const named = this.named(location.hash);
    if (named !== null) remember(this.stage, named);
    this.host.requestUpdate();
  };
}

function remembered(stage: string): string {
  try {
    return sessionStorage.getItem(keyOf(stage)) ?? '';
  } catch {
    return '';
  }
}

function remember(stage: string, sheet: string): void {
  try {
    sessionStorage.setItem(keyOf(stage), sheet);
  } catch {
    // A browser that stores nothing still follows the address.
  }
}

function keyOf(stage: string): string {
  return `leadline-${stage}-sheet`;
}
