import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { HandleMove } from '../charts/workbench/chart-handle';
import { sharedStyles } from '../theme/shared-styles';

/** A value along a line, moved by pointer or arrow keys in steps. Fires `ll-move`. */
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
  private frame = 0;

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
        @input=${this.pull}
        @change=${this.letGo}
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
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.tell({ id: this.name, value, done: false }));
  };

  private readonly letGo = (event: Event): void => {
    cancelAnimationFrame(this.frame);
    const value = Number((event.target as HTMLInputElement).value);
    this.tell({ id: this.name, value, done: true });
  };

  private tell(detail: HandleMove): void {
    this.dispatchEvent(new CustomEvent('ll-move', { detail, bubbles: true, composed: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-step-slider': StepSlider;
  }
}
