import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Keeps the width of its host element, so that a chart draws at the pixels it really has. */
export class ChartSize implements ReactiveController {
  width = 0;
  private readonly observer: ResizeObserver;

  constructor(private readonly host: ReactiveControllerHost & HTMLElement) {
    host.addController(this);
    // In the next frame: a chart that grows while sizes are being told would be told again at once.
    this.observer = new ResizeObserver(([entry]) => {
      if (entry) requestAnimationFrame(() => this.update(entry.contentRect.width));
    });
  }

  hostConnected(): void {
    this.update(this.host.clientWidth);
    this.observer.observe(this.host);
  }

  hostDisconnected(): void {
    this.observer.disconnect();
  }

  private update(width: number): void {
    const whole = Math.round(width);
    if (whole === this.width || whole === 0) return;
    this.width = whole;
    this.host.requestUpdate();
  }
}
