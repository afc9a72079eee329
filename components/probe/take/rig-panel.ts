import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { dbText } from '../../../src/locale/number-text';
import { sharedStyles } from '../../theme/shared-styles';
import '../connect/practice-rig';
import '../connect/rig-choice';
import { previewSentence } from '../routing/route-preview';
import './recording-rig';

/** How the speakers are reached, in short, and what that still needs. */
@customElement('ll-rig-panel')
export class RigPanel extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
      }

      .live {
        display: grid;
        gap: var(--space-2);
      }

      dd {
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    return html`<ll-rig-choice .bench=${this.bench}></ll-rig-choice> ${this.panel(state)}`;
  }

  private panel(state: BenchState) {
    switch (state.document.rig) {
      case 'practice':
        return html`<ll-practice-rig .bench=${this.bench}></ll-practice-rig>`;
      case 'recording':
        return html`<ll-recording-rig .bench=${this.bench}></ll-recording-rig>`;
      case 'live':
        return live(state);
    }
  }
}

function live(state: BenchState) {
  const { output, microphone, gainDb } = state.document.live;
  const { calibration } = state.document.microphone;
  return html`<div class="live">
    <dl class="facts">
      <dt><a href="#probe/connect">${msg('Output')}</a></dt>
      <dd>${output ? output.name || msg('chosen') : msg('as the system chooses')}</dd>
      <dt><a href="#probe/connect">${msg('Microphone')}</a></dt>
      <dd>${microphone ? microphone.name || msg('chosen') : msg('as the system chooses')}</dd>
      <dt><a href="#probe/microphone">${msg('Calibration file')}</a></dt>
      <dd>${calibration ? calibration.name : msg('none')}</dd>
      <dt><a href="#probe/level">${msg('Test level')}</a></dt>
      <dd class="num">${dbText(gainDb)}</dd>
    </dl>
    <p class="small">${previewSentence(state)}</p>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-rig-panel': RigPanel;
  }
}
