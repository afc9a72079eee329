import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { RigAbilities } from '../../src/rig/port';
import type { Bench } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { numberText, thinSpace } from '../charts/number-text';
import { sharedStyles } from '../theme/shared-styles';
import './device-picker';
import './test-level';

/** The most channels a computer's output carries to a processor. */
const mostOutputs = 8;

const cautions = [
  'Start quiet. Leave the room or wear hearing protection when the sweeps are loud.',
  'Switch amplifiers off before moving plugs.',
  'Keep this page in front: a hidden page ends the take.',
];

/** This computer's outputs and microphone, what the browser says of them, and how loud to play. */
@customElement('ll-live-rig')
export class LiveRigPanel extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
      }

      ul {
        display: grid;
        gap: var(--space-1);
        padding-left: 1.1rem;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const speakers = state.layout.channels.length;
    const abilities = state.abilities?.kind === 'live' ? state.abilities : null;
    const outputs = abilities?.outputs ?? mostOutputs;
    return html`<p>
        Needs this computer’s output wired to the processor with one channel a speaker, by HDMI or a
        multichannel interface, and a microphone at the seat.
      </p>
      ${
        speakers > outputs
          ? html`<p class="signal">
              The plan has ${speakers} speakers,
              ${abilities ? 'this output' : 'a computer’s output'} carries
              ${abilities ? outputs : `at most ${mostOutputs}`}. Choose Recording to reach all of
              them in one take.
            </p>`
          : nothing
      }
      <ll-device-picker .bench=${this.bench}></ll-device-picker>
      ${abilities ? abilityFacts(abilities) : nothing}
      <ll-test-level .bench=${this.bench}></ll-test-level>
      <ul>
        ${cautions.map((caution) => html`<li>${caution}</li>`)}
      </ul>`;
  }
}

function abilityFacts({ name, outputs, inputs, sampleRate, unknown }: RigAbilities) {
  return html`<dl class="facts">
    <dt>Output</dt>
    <dd>${name}</dd>
    <dt>Channels out</dt>
    <dd class="num">${outputs}</dd>
    <dt>Channels in</dt>
    <dd class="num">${inputs}</dd>
    <dt>Sample rate</dt>
    <dd class="num">${numberText(sampleRate / 1000, sampleRate % 1000 ? 1 : 0)}${thinSpace}kHz</dd>
    ${
      unknown.length > 0
        ? html`<dt>Not told</dt>
            <dd>${unknown.join(', ')}</dd>`
        : nothing
    }
  </dl>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-live-rig': LiveRigPanel;
  }
}
