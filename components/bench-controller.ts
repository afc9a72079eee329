import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Bench, BenchState } from '../src/session/bench';

/** An element that is handed the bench as a property. */
export interface BenchHost extends ReactiveControllerHost {
  bench: Bench | null;
}

/** Subscribes its element to the bench in hand: every change of the bench draws it again. */
export class BenchController implements ReactiveController {
  private readonly host: BenchHost;
  private heard: Bench | null = null;
  private unsubscribe: (() => void) | null = null;

  constructor(host: BenchHost) {
    this.host = host;
    host.addController(this);
  }

  /** Null until the element has a bench. */
  get state(): BenchState | null {
    return this.host.bench?.state ?? null;
  }

  hostConnected(): void {
    this.follow(this.host.bench);
  }

  hostUpdate(): void {
    this.follow(this.host.bench);
  }

  hostDisconnected(): void {
    this.follow(null);
  }

  private follow(bench: Bench | null): void {
    if (bench === this.heard) return;
    this.unsubscribe?.();
    this.heard = bench;
    this.unsubscribe = bench?.subscribe(() => this.host.requestUpdate()) ?? null;
  }
}
