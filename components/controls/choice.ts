import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';

export interface ChoiceOption {
  readonly value: string;
  readonly label: string;
  readonly hint?: string;
  /** Drawn before the label. */
  readonly mark?: TemplateResult;
}

/** A few exclusive choices side by side. Fires `ll-pick` with the chosen value. */
@customElement('ll-choice')
export class Choice extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [
    sharedStyles,
    css`
      fieldset {
        margin: 0;
        padding: 0;
        border: 0;
        min-width: 0;
      }

      legend {
        padding: 0;
        margin-bottom: var(--space-1);
        font-weight: 700;
      }

      .options {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }

      label {
        position: relative;
        display: inline-flex;
        flex-direction: column;
        justify-content: center;
        min-height: var(--target);
        padding: var(--space-1) var(--space-3);
        border: var(--line) solid var(--edge);
        border-radius: var(--radius);
        background: var(--sheet);
        cursor: pointer;
      }

      label:hover {
        border-color: var(--ink);
      }

      input {
        position: absolute;
        inset: 0;
        margin: 0;
        opacity: 0;
        cursor: inherit;
      }

      label:has(:checked) {
        background: var(--ink);
        border-color: var(--ink);
        color: var(--on-ink);
        font-weight: 700;
      }

      label:has(:focus-visible) {
        outline: var(--focus);
        outline-offset: 2px;
      }

      label:has(:disabled) {
        cursor: not-allowed;
        border-color: var(--rule);
        color: var(--soft);
      }

      label:has(:checked:disabled) {
        background: var(--track);
        color: var(--ink);
      }

      .named {
        display: inline-flex;
        align-items: center;
        gap: 0.35rem;
      }

      small {
        font-size: var(--text-small);
        font-weight: 400;
        line-height: 1.2;
      }
    `,
  ];

  @property() label = '';
  @property({ attribute: false }) options: readonly ChoiceOption[] = [];
  @property() value: string | null = null;
  @property({ type: Boolean }) disabled = false;

  protected override render(): TemplateResult {
    return html`<fieldset ?disabled=${this.disabled}>
      <legend>${this.label}</legend>
      <div class="options">
        ${this.options.map(
          (option) =>
            html`<label>
              <input
                type="radio"
                name="choice"
                .value=${option.value}
                .checked=${option.value === this.value}
                @change=${() => this.pick(option.value)}
              />
              <span class="named">${option.mark ?? nothing}<span>${option.label}</span></span>
              ${option.hint ? html`<small>${option.hint}</small>` : nothing}
            </label>`,
        )}
      </div>
    </fieldset>`;
  }

  private pick(value: string): void {
    this.value = value;
    this.dispatchEvent(
      new CustomEvent('ll-pick', { detail: value, bubbles: true, composed: true }),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-choice': Choice;
  }
  interface HTMLElementEventMap {
    'll-pick': CustomEvent<string>;
  }
}
