import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { HandleMove } from '../charts/workbench/chart-handle';
import { sharedStyles } from '../theme/shared-styles';

/**
 * A value along a line, moved by pointer or arrow keys in steps. Fires `ll-move`: while it is held,
 * by pointer or key, and done when it is let go.
 */
@customElement('ll-step-slider')
export class StepSlider extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-1);
        min-width: 0;
      }

      .head {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-3);
        justify-content: space-between;
      }

      label {
        font-weight: 700;
      }

      input {
        width: 100%;
        min-height: 2rem;
        margin: 0;
        accent-color: var(--signal);
        cursor: ew-resize;
        touch-action: none;
      }
    `,
  ];

  /** What `ll-move` names it by. */
  @property() name = '';
  @property() label = '';
  @property({ type: Number }) value = 0;
  @property({ type: Number }) min = 0;
  @property({ type: Number }) max = 0;
  @property({ type: Number }) step = 1;
  /** The value in words. */
  @property() text = '';
  /** Values that mean something, ticked along the line. */
  @property({ attribute: false }) marks: readonly number[] = [];
  @property({ type: Boolean }) disabled = false;
  private soon: ReturnType<typeof setTimeout> | 0 = 0;
  private held: number | null = null;
  private keyIsDown = false;

  override render() {
    return html`<div class="head">
        <label for="slider">${this.label}</label>
        <span class="num">${this.text}</span>
      </div>
      <input
        id="slider"
        type="range"
        list=${this.marks.length > 0 ? 'marks' : nothing}
        min=${this.min}
        max=${this.max}
        step=${this.step}
        .value=${String(this.value)}
        aria-valuetext=${this.text}
        ?disabled=${this.disabled}
        @keydown=${() => (this.keyIsDown = true)}
        @input=${this.pull}
        @change=${() => {
          if (!this.keyIsDown) this.letGo();
        }}
        @keyup=${this.release}
        @blur=${this.release}
      />
      ${
        this.marks.length > 0
          ? html`<datalist id="marks">
              ${this.marks.map((value) => html`<option value=${value}></option>`)}
            </datalist>`
          : nothing
      }`;
  }

  private readonly pull = (event: Event): void => {
    const value = Number((event.target as HTMLInputElement).value);
    this.held = value;
    clearTimeout(this.soon);
    const show = () => this.tell({ id: this.name, value, done: false });
    if (this.keyIsDown) show();
    else this.soon = setTimeout(show);
  };

  private readonly release = (): void => {
    this.keyIsDown = false;
    this.letGo();
  };

  private letGo(): void {
    clearTimeout(this.soon);
    const { held } = this;
    this.held = null;
    if (held !== null) this.tell({ id: this.name, value: held, done: true });
  }

  private tell(detail: HandleMove): void {
    this.dispatchEvent(new CustomEvent('ll-move', { detail, bubbles: true, composed: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-step-slider': StepSlider;
  }
}
