import { msg } from '@lit/localize';
import { LitElement, css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { bannerStyles } from '../controls/banner-styles';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';

/**
 * Says that another tab writes and this one only shows, and once that this one writes from now on.
 * Carries the attribute `quiet` while it says nothing.
 */
@customElement('ll-other-tab')
export class OtherTab extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    bannerStyles,
    css`
      .banner {
        border-color: var(--ink);
        background: var(--sheet);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @state() private saying: 'nothing' | 'follows' | 'took over' = 'nothing';
  private readonly follow = new BenchController(this);

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (this.follow.state?.saved === 'elsewhere') this.saying = 'follows';
    else if (this.saying === 'follows') this.saying = 'took over';
  }

  protected override render(): TemplateResult {
    return html`<div role="status" class=${this.saying === 'nothing' ? '' : 'banner'}>
      ${
        this.saying === 'follows'
          ? html`<p>
              ${msg('Leadline is open in another tab, and that one saves. This tab follows: it shows what is saved there, and changes nothing. Close the other tab to go on here.')}
            </p>`
          : nothing
      }
      ${
        this.saying === 'took over'
          ? html`<p>
                ${msg('The other tab is closed. You can go on here: this tab saves from now on.')}
              </p>
              <button class="ghost" @click=${this.understand}>${msg('Understood')}</button>`
          : nothing
      }
    </div>`;
  }

  protected override updated(): void {
    this.toggleAttribute('quiet', this.saying === 'nothing');
  }

  private readonly understand = (): void => {
    this.saying = 'nothing';
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-other-tab': OtherTab;
  }
}
