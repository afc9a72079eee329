import { msg, str } from '@lit/localize';
import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';

/** The session's name, to be read and to be written over. Fires `ll-rename`. */
@customElement('ll-session-name')
export class SessionName extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [
    sharedStyles,
    css`
      :host {
        min-width: 0;
      }

      input {
        width: 100%;
        min-height: var(--target);
        padding: 0 var(--space-2);
        border: var(--line) solid transparent;
        border-radius: var(--radius);
        background: none;
        color: inherit;
        font: inherit;
        text-overflow: ellipsis;
        field-sizing: content;
        min-width: 5rem;
        max-width: 100%;
      }

      input:hover {
        border-color: var(--edge);
      }
    `,
  ];

  @property() name = '';
  /** What it is called for assistive technology. */
  @property() label: string | null = null;

  protected override render(): TemplateResult {
    const label = this.label ?? msg('Session name');
    return html`<input
      aria-label=${label}
      title=${msg(str`${label}: click to change`)}
      maxlength="80"
      autocomplete="off"
      spellcheck="false"
      .value=${this.name}
      @change=${this.rename}
    />`;
  }

  private readonly rename = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const name = input.value.trim();
    if (name === '') {
      input.value = this.name;
      return;
    }
    this.dispatchEvent(new CustomEvent('ll-rename', { detail: name }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-session-name': SessionName;
  }
}
