import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sharedStyles } from '../../theme/shared-styles';

/** What was typed; `done` once the field is left. */
export interface Typed {
  readonly text: string;
  readonly done: boolean;
}

/**
 * One line of text that is checked while it is typed. What is typed stays as it is until the field
 * is left; then `text` shows how it was understood. Fires `ll-typed`.
 */
@customElement('ll-draft-field')
export class DraftField extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        min-width: 0;
      }

      div {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        align-content: start;
        gap: var(--space-1);
      }

      label {
        font-weight: 700;
      }

      .entry {
        display: flex;
        align-items: center;
        gap: var(--space-2);
      }

      input {
        flex: 1 1 auto;
        width: 100%;
        min-width: 3rem;
        min-height: var(--target);
        padding: var(--space-1) var(--space-2);
        border: var(--line) solid var(--edge);
        border-radius: var(--radius);
        background: var(--sheet);
        color: var(--ink);
        font: inherit;
      }

      input.num {
        font-family: var(--mono);
      }

      input:disabled {
        border-color: var(--rule);
        color: var(--soft);
      }

      input[aria-invalid='true'] {
        border-color: var(--signal);
        border-width: 2px;
      }

      .wrong {
        color: var(--signal);
        font-weight: 700;
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property() label = '';
  /** The label is said but not shown, in tables. */
  @property({ type: Boolean }) bare = false;
  @property() text = '';
  @property() unit = '';
  @property() hint = '';
  @property() wrong = '';
  @property({ type: Boolean }) numeric = false;
  @property({ type: Boolean }) disabled = false;
  @state() private typed: string | null = null;

  override render() {
    const said = this.wrong === '' ? this.hint : this.wrong;
    return html`<div>
      <label for="entry" class=${this.bare ? 'unseen' : ''}>${this.label}</label>
      <span class="entry">
        <input
          id="entry"
          class=${this.numeric ? 'num' : ''}
          autocomplete="off"
          spellcheck="false"
          inputmode=${this.numeric ? 'decimal' : nothing}
          .value=${this.typed ?? this.text}
          ?disabled=${this.disabled}
          aria-invalid=${this.wrong === '' ? 'false' : 'true'}
          aria-describedby="said"
          @input=${(event: Event) => this.tell((event.target as HTMLInputElement).value, false)}
          @change=${(event: Event) => this.tell((event.target as HTMLInputElement).value, true)}
          @blur=${() => (this.typed = null)}
        />
        ${this.unit === '' ? nothing : html`<span>${this.unit}</span>`}
      </span>
      ${
        said === ''
          ? nothing
          : html`<p id="said" class=${this.wrong === '' ? 'soft small' : 'wrong small'}>${said}</p>`
      }
    </div>`;
  }

  private tell(text: string, done: boolean): void {
    this.typed = text;
    this.dispatchEvent(new CustomEvent('ll-typed', { detail: { text, done }, bubbles: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-draft-field': DraftField;
  }
  interface HTMLElementEventMap {
    'll-typed': CustomEvent<Typed>;
  }
}
