import { msg } from '@lit/localize';
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { SheetController } from '../controls/sheet-controller';
import '../controls/sheet-nav';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import './handover/handover-sheet';
import './proof-sheet';
import {
  proveSheetAddress,
  proveSheetFromHash,
  proveSheetNames,
  proveSheetOrder,
  type ProveSheetId,
} from './prove-sheets';
import { proveTitle } from './prove-title';
import './visits/visits-sheet';

const links = () =>
  proveSheetOrder.map((id) => ({
    id,
    name: proveSheetNames[id],
    address: proveSheetAddress(id),
  }));

/** Stage 5: whether what was typed works, the record of it, and what changed since another visit. */
@customElement('ll-prove')
export class ProveStage extends LitElement {
  static override styles = [sharedStyles, stageStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);
  private readonly place = new SheetController(this, 'prove', proveSheetFromHash);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const here = this.place.sheet ?? 'proof';
    const { title, lede } = proveTitle(state, here);
    return html`<ll-sheet-nav
        label=${msg('Sheets of Prove')}
        .sheets=${links()}
        .here=${here}
      ></ll-sheet-nav>
      <div class="lede">
        <h1>${title}</h1>
        <p>${lede}</p>
      </div>
      ${this.renderSheet(here)}`;
  }

  private renderSheet(sheet: ProveSheetId): TemplateResult {
    const { bench, selected } = this;
    switch (sheet) {
      case 'proof':
        return html`<ll-proof-sheet .bench=${bench} .selected=${selected}></ll-proof-sheet>`;
      case 'handover':
        return html`<ll-handover-sheet .bench=${bench}></ll-handover-sheet>`;
      case 'visits':
        return html`<ll-visits-sheet .bench=${bench} .selected=${selected}></ll-visits-sheet>`;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-prove': ProveStage;
  }
}
