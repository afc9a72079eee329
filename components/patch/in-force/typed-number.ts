import { LitElement, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { trimmedText } from '../../../src/locale/number-text';
import { readEntry } from '../../../src/locale/read-entry';
import '../sheet/draft-field';
import type { Typed } from '../sheet/draft-field';

/**
 * A number that may be left empty. Fires `ll-maybe` with the number or null once the field is left;
 * what is wrong is said under it and changes nothing.
 */
@customElement('ll-typed-number')
export class TypedNumber extends LitElement {
  @property() label = '';
  @property() unit = '';
  @property({ attribute: false }) value: number | null = null;
  @property({ type: Number }) min = -Infinity;
  @property({ type: Number }) max = Infinity;
  @property({ type: Boolean }) disabled = false;
  /** What was typed wrong, and why; null when it is right. */
  @state() private wrong: { readonly text: string; readonly why: string } | null = null;

  override render() {
    return html`<ll-draft-field
      label=${this.label}
      unit=${this.unit}
      bare
      numeric
      ?disabled=${this.disabled}
      .text=${this.wrong?.text ?? shown(this.value)}
      .wrong=${this.wrong?.why ?? ''}
      @ll-typed=${(event: CustomEvent<Typed>) => this.enter(event.detail)}
    ></ll-draft-field>`;
  }

  private enter({ text, done }: Typed): void {
    if (!done) return;
    const same = text === shown(this.value);
    const read = same ? this.value : text.trim() === '' ? null : readEntry(text, this);
    this.wrong = typeof read === 'string' ? { text, why: read } : null;
    if (typeof read === 'string' || read === this.value) return;
    this.dispatchEvent(new CustomEvent('ll-maybe', { detail: read }));
  }
}

function shown(value: number | null): string {
  return value === null ? '' : trimmedText(value, 3);
}

declare global {
  interface HTMLElementTagNameMap {
    'll-typed-number': TypedNumber;
  }
  interface HTMLElementEventMap {
    'll-maybe': CustomEvent<number | null>;
  }
}
