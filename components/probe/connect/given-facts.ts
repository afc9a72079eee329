import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { numberText, thinSpace } from '../../../src/locale/number-text';
import { sharedStyles } from '../../theme/shared-styles';

/** What the browser really gave: channels, rate, what it keeps to itself, notes of the last take. */
@customElement('ll-given-facts')
export class GivenFacts extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      dd {
        overflow-wrap: anywhere;
      }

      ul {
        display: grid;
        gap: var(--space-1);
        padding-left: 1.1rem;
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const abilities = state.abilities?.kind === 'live' ? state.abilities : null;
    const notes = liveNotes(state);
    if (!abilities && notes.length === 0) {
      return html`<p class="soft">
        ${msg('Told once the microphone was opened: by a take, by noise, or by the climb to a level.')}
      </p>`;
    }
    return html`${
      abilities
        ? html`<dl class="facts">
            <dt>${msg('Output')}</dt>
            <dd>${abilities.name}</dd>
            <dt>${msg('Channels out')}</dt>
            <dd class="num">${abilities.outputs}</dd>
            <dt>${msg('Channels in')}</dt>
            <dd class="num">${abilities.inputs}</dd>
            <dt>${msg('Sample rate')}</dt>
            <dd class="num">
              ${numberText(abilities.sampleRate / 1000, abilities.sampleRate % 1000 ? 1 : 0)}${thinSpace}kHz
            </dd>
            <dt>${msg('Not told')}</dt>
            <dd>${abilities.unknown.length > 0 ? abilities.unknown.join(', ') : msg('nothing')}</dd>
          </dl>`
        : nothing
    }
    ${
      notes.length > 0
        ? html`<h3>${msg('Noted with the newest take')}</h3>
            <ul class="small">
              ${notes.map((note) => html`<li>${note}</li>`)}
            </ul>`
        : nothing
    }`;
  }
}

/** Notes of the newest take that was played live. */
function liveNotes({ document }: BenchState): readonly string[] {
  return document.takes.findLast(({ rig }) => rig === 'live')?.notes ?? [];
}

declare global {
  interface HTMLElementTagNameMap {
    'll-given-facts': GivenFacts;
  }
}
