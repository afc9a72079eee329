import { msg } from '@lit/localize';
import { LitElement, css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';
import { buttonStyles } from './button-styles';

/** A place to drop one file, or to choose it. Fires `ll-file` with the file. */
@customElement('ll-file-drop')
export class FileDrop extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: block;
      }

      .zone {
        display: grid;
        gap: var(--space-2);
        justify-items: start;
        padding: var(--space-4);
        border: var(--line-strong) dashed var(--edge);
        border-radius: var(--radius);
      }

      .zone.over {
        border-color: var(--signal);
        background: var(--wash);
      }
    `,
  ];

  /** What the button says. */
  @property() label: string | null = null;
  /** What stands under the button. */
  @property() hint: string | null = null;
  /** What the file is, for assistive technology. */
  @property() name: string | null = null;
  /** File types, as an input's `accept` takes them. */
  @property() accept = '';
  @property({ type: Boolean }) disabled = false;
  @state() private over = false;

  private hand(files: FileList | null | undefined): void {
    const file = files?.[0];
    if (!file || this.disabled) return;
    this.dispatchEvent(new CustomEvent('ll-file', { detail: file, bubbles: true, composed: true }));
  }

  private choose(): void {
    this.renderRoot.querySelector('input')?.click();
  }

  override render() {
    return html`<div
      class="zone ${this.over ? 'over' : ''}"
      @dragover=${(event: DragEvent) => {
        event.preventDefault();
        this.over = !this.disabled;
      }}
      @dragleave=${() => (this.over = false)}
      @drop=${(event: DragEvent) => {
        event.preventDefault();
        this.over = false;
        this.hand(event.dataTransfer?.files);
      }}
    >
      <button class="ghost" ?disabled=${this.disabled} @click=${() => this.choose()}>
        ${this.label ?? msg('Choose the file')}
      </button>
      <span class="soft small">${this.hint ?? msg('or drop it here')}</span>
      <input
        type="file"
        accept=${this.accept}
        hidden
        aria-label=${this.name ?? msg('File')}
        @change=${(event: Event) => {
          const input = event.currentTarget as HTMLInputElement;
          this.hand(input.files);
          input.value = '';
        }}
      />
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-file-drop': FileDrop;
  }
  interface HTMLElementEventMap {
    'll-file': CustomEvent<File>;
  }
}
