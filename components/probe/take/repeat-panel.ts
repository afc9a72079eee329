import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { sayList } from '../../../src/proposal/phrases';

/** Names the sweeps that came out damaged or were never reached, and repeats only them. */
@customElement('ll-repeat-panel')
export class RepeatPanel extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
        justify-items: start;
        padding: var(--space-4);
        border: var(--line-strong) solid var(--signal);
        border-left-width: 6px;
        border-radius: var(--radius);
        background: var(--wash);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state || state.toRepeat.length === 0) return nothing;
    const { toRepeat, readings } = state;
    const names = sayList(toRepeat);
    const faults = (readings?.channels ?? [])
      .filter(({ channel }) => toRepeat.includes(channel))
      .flatMap((reading) => reading.faults);
    const read = new Set(readings?.channels.map(({ channel }) => channel));
    const missing = toRepeat.filter((label) => !read.has(label));
    const recording = state.document.rig === 'recording';
    return html`${faults.map(({ sentence }) => html`<p>${sentence}</p>`)}
    ${
      missing.length > 0
        ? html`<p>${msg(str`The take ended before it came to ${sayList(missing)}.`)}</p>`
        : nothing
    }
    ${
      recording
        ? html`<p>
            ${msg('Play and record the take again; the other speakers need not be read anew.')}
          </p>`
        : html`<button
              class="go"
              ?disabled=${state.activity.kind !== 'idle'}
              @click=${() => void this.bench?.repeatSegments(toRepeat)}
            >
              ${msg(str`Repeat ${names}`)}
            </button>
            <p class="small">
              ${msg(str`Only ${toRepeat.length === 1 ? msg('this sweep is') : msg('these sweeps are')} played again, and joined to what is there. Leave the microphone where it stands.`)}
            </p>`
    }`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-repeat-panel': RepeatPanel;
  }
}
