import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { UpdateState, Updates } from '../../src/offline/updates';

/** An element that is told of the app's newer versions. */
export interface UpdatesHost extends ReactiveControllerHost {
  updates: Updates | null;
}

/** Subscribes its element to the updates in hand: every change of them draws it again. */
export class UpdatesController implements ReactiveController {
  private readonly host: UpdatesHost;
  private heard: Updates | null = null;
  private unsubscribe: (() => void) | null = null;

  constructor(host: UpdatesHost) {
    this.host = host;
    host.addController(this);
  }

  /** Null where nothing is kept: in development, or without a secure connection. */
  get state(): UpdateState | null {
    return this.host.updates?.state ?? null;
  }

  hostConnected(): void {
    this.follow(this.host.updates);
  }

  hostUpdate(): void {
    this.follow(this.host.updates);
  }

  hostDisconnected(): void {
    this.follow(null);
  }

  private follow(updates: Updates | null): void {
    if (updates === this.heard) return;
    this.unsubscribe?.();
    this.heard = updates;
    this.unsubscribe = updates?.subscribe(() => this.host.requestUpdate()) ?? null;
  }
}
