import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { checkFromSeat } from '../../../src/wirecheck/check-from-seat';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { findingStyles } from '../finding-styles';
import { sayFinding } from '../say-finding';

/** The quick form of the walk: one stop at the seat, held against the declared distances. */
@customElement('ll-seat-check')
export class SeatCheck extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    findingStyles,
    css`
      :host {
        gap: var(--space-3);
      }

      button {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ type: Boolean }) disabled = false;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { seatSounds } = state.document;
    return html`<h2>${msg('Only a minute? From the seat')}</h2>
      <p>
        ${msg('One stop at the seat, held against the declared distances, warns of channels that arrive from the wrong place. It proves nothing.')}
      </p>
      <button
        class="ghost"
        ?disabled=${this.disabled}
        @click=${() => this.dispatchEvent(new CustomEvent('ll-from-seat'))}
      >
        ${seatSounds.length === 0 ? msg('Play from the seat') : msg('Play from the seat again')}
      </button>
      ${seatSounds.length === 0 ? nothing : this.said(state)}`;
  }

  private said(state: BenchState) {
    const { seatSounds, conditions } = state.document;
    const distances = declaredDistances(state);
    const check = checkFromSeat(seatSounds, distances, conditions.temperatureCelsius);
    const { findings, cannotTell, unplaced } = check;
    return html`<h3 role="status">
        ${findings.length === 0 ? msg('Nothing speaks against the wiring') : msg('Look at this')}
      </h3>
      ${findings.map((finding) => sayFinding(finding, state))}
      ${
        cannotTell.length === 0
          ? nothing
          : html`<p class="soft small">
              ${msg(str`Too alike in distance to be told apart: ${cannotTell.map((pair) => pair.join(' and ')).join(', ')}.`)}
            </p>`
      }
      ${
        unplaced.length === 0
          ? nothing
          : html`<p class="soft small">
              ${msg(str`Without a declared distance: ${unplaced.join(', ')}. Enter distances on the plan, or in the processor’s settings in force.`)}
            </p>`
      }`;
  }
}

/** What is declared of distances: the plan's, else those typed into the processor. */
function declaredDistances({
  document,
}: BenchState): Readonly<Partial<Record<ChannelLabel, number>>> {
  const planned = Object.entries(document.system.places).flatMap(([label, place]) =>
    place.distanceMetres === null ? [] : [[label, place.distanceMetres] as const],
  );
  return { ...document.inForce.distanceMetres, ...Object.fromEntries(planned) };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-seat-check': SeatCheck;
  }
  interface HTMLElementEventMap {
    'll-from-seat': CustomEvent<undefined>;
  }
}
