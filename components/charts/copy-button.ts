import { msg, str } from '@lit/localize';
import { LitElement, css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';
import { chartStyles } from './chart-styles';

/** Copies lines of tab-separated text under a head line, and says how many or why not. */
@customElement('ll-copy-button')
export class CopyButton extends LitElement {
  static override styles = [
    sharedStyles,
    chartStyles,
    css`
      div {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1) var(--space-3);
        align-items: center;
        justify-content: flex-end;
      }

      /* No gap beside a button that has nothing to say. */
      [role='status']:empty {
        position: absolute;
      }
    `,
  ];

  /** Left out: that numbers are copied. */
  @property() label = '';
  /** What is copied, or what writes it once it is wanted; empty for nothing. */
  @property({ attribute: false }) text: string | (() => string) = '';
  @state() private said = '';

  /** What a press copies. */
  get written(): string {
    return typeof this.text === 'string' ? this.text : this.text();
  }

  private async copy(): Promise<void> {
    const text = this.written;
    const lines = Math.max(0, text.trim().split('\n').length - 1);
    try {
      await navigator.clipboard.writeText(text);
      this.said = msg(str`Copied ${lines} ${lines === 1 ? msg('row') : msg('rows')}.`);
    } catch {
      this.said = msg('The browser refused to copy; select the rows of the table instead.');
    }
  }

  override render() {
    return html`<div>
      <span class="small soft" role="status">${this.said}</span>
      <button type="button" ?disabled=${this.text === ''} @click=${() => void this.copy()}>
        ${this.label || msg('Copy numbers')}
      </button>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-copy-button': CopyButton;
  }
}
