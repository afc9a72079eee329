import type { ReactiveController, ReactiveControllerHost } from 'lit';

const leastReach = 90;

/**
 * Half the width of a square drawing in pixels, so that text keeps its size whatever the width.
 * Asks the host to draw again when its width changes or fonts have arrived.
 */
export class DrawingReach implements ReactiveController {
  reach: number;
  private frame = 0;
  private readonly host: ReactiveControllerHost & Element;
  private readonly measureAgain: () => void;
  /** Drawn in the next frame: a new height in this one would set off the observer again. */
  private readonly sizes = new ResizeObserver(([entry]) => {
    const width = entry?.contentRect.width ?? 0;
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      const reach = Math.max(leastReach, Math.round(width / 2));
      if (reach === this.reach) return;
      this.reach = reach;
      this.host.requestUpdate();
    });
  });

  /** `reach` until the width is known; `onFonts` is called before the host draws with new fonts. */
  constructor(host: ReactiveControllerHost & Element, reach: number, onFonts?: () => void) {
    this.host = host;
    this.reach = reach;
    this.measureAgain = () => {
      onFonts?.();
      host.requestUpdate();
    };
    host.addController(this);
  }

  hostConnected(): void {
    this.sizes.observe(this.host);
    document.fonts.addEventListener('loadingdone', this.measureAgain);
  }

  hostDisconnected(): void {
    this.sizes.disconnect();
    cancelAnimationFrame(this.frame);
    document.fonts.removeEventListener('loadingdone', this.measureAgain);
  }
}
