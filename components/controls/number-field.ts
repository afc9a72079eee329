import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { measures, type MeasureName } from '../../src/locale/measure';
import { readEntry } from '../../src/locale/read-entry';
import { sharedStyles } from '../theme/shared-styles';
import { fieldStyles } from './field-styles';

/**
 * A number with its unit; the value of a length or a temperature is SI, however it is typed. Fires
 * `ll-number` once a number within range is entered; anything else is said under the field and
 * changes nothing.
 */
@customElement('ll-number')
export class NumberField extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [sharedStyles, fieldStyles];

  @property() label = '';
  /** Unit of a plain number; lengths and temperatures have theirs by the locale. */
  @property() unit = '';
  @property() measure: MeasureName = 'number';
  @property() hint = '';
  @property({ type: Number }) value = 0;
  @property({ type: Number }) min = -Infinity;
  @property({ type: Number }) max = Infinity;
  /** Decimals shown, more may be typed; when not given, one if the number is not whole. */
  @property({ type: Number }) decimals: number | null = null;
  @property({ type: Boolean }) disabled = false;
  /** What is wrong with the value where it is used, in a sentence; null when nothing is. */
  @property({ attribute: false }) fault: string | null = null;
  @state() private wrong: string | null = null;
  @state() private typed: string | null = null;
  /** The value as the field shows it. */
  private shown = '';

  /** A value that comes from elsewhere replaces what was typed wrong. */
  protected override willUpdate(changed: PropertyValues): void {
    if (!changed.has('value') || this.wrong === null) return;
    this.wrong = null;
    this.typed = null;
  }

  /** Whoever lays fields out can see that one is said to be wrong. */
  protected override updated(): void {
    this.toggleAttribute('wrong', (this.wrong ?? this.fault) !== null);
  }

  protected override render(): TemplateResult {
    const digits = this.decimals ?? (Number.isInteger(this.value) ? 0 : 1);
    const measure = measures[this.measure];
    const wrong = this.wrong ?? this.fault;
    this.shown = measure.show(this.value, digits);
    return html`<div class="field">
      <label for="entry">${this.label}</label>
      <span class="entry">
        <input
          id="entry"
          inputmode=${measure.keys()}
          autocomplete="off"
          .value=${this.typed ?? this.shown}
          ?disabled=${this.disabled}
          aria-invalid=${wrong ? 'true' : 'false'}
          aria-describedby="said"
          @change=${this.enter}
        />
        <span>${measure.unit(this.unit)}</span>
      </span>
      <p id="said" class=${wrong ? 'wrong' : 'soft small'} role=${wrong ? 'alert' : nothing}>
        ${wrong ?? this.hint}
      </p>
    </div>`;
  }

  private readonly enter = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const text = input.value;
    // What is shown is rounded: read again, it would move the value.
    const isSame = text === this.shown && Number.isFinite(this.value);
    const read = isSame ? this.value : readEntry(text, this);
    if (typeof read === 'string') {
      this.wrong = read;
      this.typed = text;
      return;
    }
    this.wrong = null;
    this.typed = null;
    this.value = read;
    this.requestUpdate();
    // The same number, written otherwise, changes nothing that would be drawn anew.
    void this.updateComplete.then(() => (input.value = this.typed ?? this.shown));
    if (isSame) return;
    this.dispatchEvent(
      new CustomEvent('ll-number', { detail: read, bubbles: true, composed: true }),
    );
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-number': NumberField;
  }
  interface HTMLElementEventMap {
    'll-number': CustomEvent<number>;
  }
}
