import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { sheetFromHash, type SheetId } from './probe-sheets';

const key = 'leadline-probe-sheet';

/** Follows which sheet of Probe the address names, and remembers it for the way back. */
export class SheetController implements ReactiveController {
  private readonly host: ReactiveControllerHost;

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  /** The sheet named in the address, else the last one shown, else null. */
  get sheet(): SheetId | null {
    return sheetFromHash(location.hash) ?? remembered();
  }

  hostConnected(): void {
    window.addEventListener('hashchange', this.read);
    this.read();
  }

  hostDisconnected(): void {
    window.removeEventListener('hashchange', this.read);
  }

  private readonly read = (): void => {
    const named = sheetFromHash(location.hash);
    if (named) remember(named);
    this.host.requestUpdate();
  };
}

function remembered(): SheetId | null {
  try {
    return sheetFromHash(`#probe/${sessionStorage.getItem(key) ?? ''}`);
  } catch {
    return null;
  }
}

function remember(sheet: SheetId): void {
  try {
    sessionStorage.setItem(key, sheet);
  } catch {
    // A browser that stores nothing still follows the address.
  }
}
