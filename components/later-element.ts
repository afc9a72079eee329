import { LitElement } from 'lit';

/** An element that draws in a task of its own, after what it was handed its news in. */
export abstract class LaterElement extends LitElement {
  protected override async scheduleUpdate(): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve));
    await super.scheduleUpdate();
  }
}
