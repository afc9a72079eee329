import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { sharedStyles } from '../theme/shared-styles';
import { appStyles } from './app-styles';
import { stageFromHash, type StageId } from './stages';

/** The whole screen: header with the rail, the plan at the side, one stage, the strip at the foot. */
@customElement('ll-app')
export class App extends LitElement {
  static override styles = [sharedStyles, appStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @state() private stage: StageId = stageFromHash(location.hash);
  @state() private selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('hashchange', this.readHash);
    window.addEventListener('keydown', this.stopOnEscape, { capture: true });
    this.addEventListener('ll-select', (event) => (this.selected = event.detail));
    this.addEventListener('ll-go', (event) => (location.hash = event.detail));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('hashchange', this.readHash);
    window.removeEventListener('keydown', this.stopOnEscape, { capture: true });
  }

  protected override render(): TemplateResult | typeof nothing {
    const bench = this.bench;
    const now = this.follow.state;
    if (!bench || !now) return nothing;
    return html`<main>${this.renderStage(bench)}</main>`;
  }

  private renderStage(bench: Bench): TemplateResult {
    switch (this.stage) {
      case 'plan':
        return html`<ll-plan .bench=${bench} .selected=${this.selected}></ll-plan>`;
      case 'patch':
        return html`<ll-patch .bench=${bench} .selected=${this.selected}></ll-patch>`;
      case 'probe':
        return html`<ll-probe .bench=${bench} .selected=${this.selected}></ll-probe>`;
      case 'propose':
        return html`<ll-propose .bench=${bench} .selected=${this.selected}></ll-propose>`;
      case 'prove':
        return html`<ll-prove .bench=${bench} .selected=${this.selected}></ll-prove>`;
    }
  }

  private readonly readHash = (): void => {
    this.stage = stageFromHash(location.hash);
  };

  /** Esc silences everything, also from inside a field, before anything else may use the key. */
  private readonly stopOnEscape = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.bench?.stop();
  };
}
