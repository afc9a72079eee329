import { msg } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Trouble } from '../../src/trouble';
import { sharedStyles } from '../theme/shared-styles';
import { bannerStyles } from './banner-styles';
import { buttonStyles } from './button-styles';

/** Says what went wrong until it is dismissed. Fires `ll-dismiss`. */
@customElement('ll-trouble')
export class TroubleBanner extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    bannerStyles,
    css`
      .banner {
        border-color: var(--signal);
        border-left-width: 6px;
        background: var(--wash);
      }

      p {
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) trouble: Trouble | null = null;

  protected override render(): TemplateResult {
    return html`<div role="alert" class=${this.trouble ? 'banner' : ''}>
      ${
        this.trouble
          ? html`<p>${this.trouble.sentence}</p>
              <button class="ghost" @click=${this.dismiss}>${msg('Understood')}</button>`
          : nothing
      }
    </div>`;
  }

  private readonly dismiss = (): void => {
    this.dispatchEvent(new CustomEvent('ll-dismiss', { bubbles: true, composed: true }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-trouble': TroubleBanner;
  }
}
