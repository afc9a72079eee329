import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';
import { stageNames, type StageId, type StageStanding } from './stages';

/** The foot of each stage: what is missing before the next can be trusted, and the way there. */
@customElement('ll-next-step')
export class NextStep extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      div {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-2) var(--space-4);
        padding-top: var(--space-3);
        border-top: var(--line) solid var(--rule);
      }

      p {
        flex: 1 1 16rem;
      }
    `,
  ];

  @property({ attribute: false }) standings: readonly StageStanding[] = [];
  @property({ attribute: false }) here: StageId = 'plan';

  protected override render(): TemplateResult | typeof nothing {
    const index = this.standings.findIndex((one) => one.id === this.here);
    const now = this.standings[index];
    const next = this.standings[index + 1];
    if (!now) return nothing;
    return html`<div>
      <p class="soft">${now.missing ?? msg('Nothing is missing here.')}</p>
      ${next ? html`<a class="ghost" href="#${next.id}">${msg(str`Go to ${stageNames[next.id]}`)}</a>` : nothing}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-next-step': NextStep;
  }
}
