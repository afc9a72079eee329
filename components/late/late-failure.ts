import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Trouble } from '../../src/trouble';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';

/** Stands where a part of the app should be that did not load. Fires `ll-again`. */
@customElement('ll-late-failure')
export class LateFailure extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        justify-items: start;
      }

      p {
        overflow-wrap: anywhere;
      }

      .ways {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-3);
      }
    `,
  ];

  /** What is missing, for a heading; left empty where the heading stands already. */
  @property() name = '';
  @property({ attribute: false }) trouble: Trouble | null = null;

  protected override render(): TemplateResult {
    return html`${this.name === '' ? nothing : html`<h1>${msg(str`${this.name} could not be loaded`)}</h1>`}
      <p role="alert">${this.trouble?.sentence}</p>
      <div class="ways">
        <button class="go" @click=${this.again}>${msg('Try again')}</button>
        <button class="ghost" @click=${() => location.reload()}>${msg('Reload the page')}</button>
      </div>`;
  }

  private readonly again = (): void => {
    this.dispatchEvent(new CustomEvent('ll-again', { bubbles: true, composed: true }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-late-failure': LateFailure;
  }
}
