import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';

/** Something that is on or off, with the sentence that says what it gives. Fires `ll-check`. */
@customElement('ll-check')
export class CheckField extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      label {
        display: grid;
        grid-template-columns: 1.25rem minmax(0, 1fr);
        gap: 0 var(--space-2);
        align-items: start;
        min-height: var(--target);
        padding-block: var(--space-1);
        cursor: pointer;
      }

      label:has(:disabled) {
        cursor: not-allowed;
        color: var(--soft);
      }

      input {
        width: 1.25rem;
        height: 1.25rem;
        margin: 0.1rem 0 0;
        accent-color: var(--ink);
        cursor: inherit;
      }

      b,
      small {
        display: block;
      }

      small {
        max-width: 68ch;
        font-size: var(--text-small);
      }
    `,
  ];

  @property() label = '';
  @property() hint = '';
  @property({ type: Boolean }) checked = false;
  @property({ type: Boolean }) disabled = false;

  protected override render(): TemplateResult {
    return html`<label>
      <input
        type="checkbox"
        .checked=${this.checked}
        ?disabled=${this.disabled}
        aria-describedby="hint"
        aria-labelledby="name"
        @change=${this.toggle}
      />
      <span>
        <b id="name">${this.label}</b>
        <small id="hint" class="soft">${this.hint}</small>
      </span>
    </label>`;
  }

  private readonly toggle = (event: Event): void => {
    this.checked = (event.target as HTMLInputElement).checked;
    this.dispatchEvent(
      new CustomEvent('ll-check', { detail: this.checked, bubbles: true, composed: true }),
    );
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-check': CheckField;
  }
  interface HTMLElementEventMap {
    'll-check': CustomEvent<boolean>;
  }
}
