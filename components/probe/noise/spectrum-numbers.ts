import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { NoiseSpectrum } from '../../../src/noise/noise-state';
import { CalmElement } from '../../calm-element';
import '../../charts/number-table';
import { sharedStyles } from '../../theme/shared-styles';
import { spectrumCopy, spectrumTable } from './spectrum-table';

/** The numbers behind the live spectrum. They change once a second: no more could be read. */
@customElement('ll-spectrum-numbers')
export class SpectrumNumbers extends CalmElement {
  static override styles = sharedStyles;

  @property({ attribute: false }) spectrum: NoiseSpectrum | null = null;
  @property() caption = '';
  protected override readonly calmMilliseconds = 1000;

  override render() {
    const { spectrum, caption } = this;
    if (!spectrum) return nothing;
    return html`<ll-number-table
      .caption=${caption}
      .numbers=${{ table: () => spectrumTable(spectrum), copy: () => spectrumCopy(spectrum) }}
    ></ll-number-table>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-spectrum-numbers': SpectrumNumbers;
  }
}
