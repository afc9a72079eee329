import { LitElement } from 'lit';

/** An element that draws only so often, however many times a second it is handed something new. */
export abstract class CalmElement extends LitElement {
  /** Least time between two drawings, milliseconds. */
  protected readonly calmMilliseconds: number = 100;
  private nextDrawing = 0;

  protected override async scheduleUpdate(): Promise<void> {
    const wait = this.nextDrawing - performance.now();
    if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
    this.nextDrawing = performance.now() + this.calmMilliseconds;
    await super.scheduleUpdate();
  }
}
