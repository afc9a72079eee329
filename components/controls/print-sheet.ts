import {
  render,
  type ReactiveController,
  type ReactiveControllerHost,
  type TemplateResult,
} from 'lit';

/**
 * While its element is on screen, printing the page prints this sheet alone: it stands beside the
 * screen only while the browser prints.
 */
export class PrintSheet implements ReactiveController {
  private readonly draw: () => TemplateResult | null;
  private box: HTMLElement | null = null;

  /** `draw` makes what is printed; null leaves the page as it is. */
  constructor(host: ReactiveControllerHost, draw: () => TemplateResult | null) {
    this.draw = draw;
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('beforeprint', this.lay);
    window.addEventListener('afterprint', this.lift);
  }

  hostDisconnected(): void {
    window.removeEventListener('beforeprint', this.lay);
    window.removeEventListener('afterprint', this.lift);
    this.lift();
  }

  private readonly lay = (): void => {
    this.lift();
    const content = this.draw();
    if (content === null) return;
    this.box = document.createElement('div');
    this.box.className = 'printed';
    render(content, this.box);
    document.body.append(this.box);
  };

  private readonly lift = (): void => {
    this.box?.remove();
    this.box = null;
  };
}
