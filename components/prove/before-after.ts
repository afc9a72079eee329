import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../src/session/bench';
import type { ProofState } from '../../src/session/derive-proof';
import type { Channel, ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import '../charts/curve/curve-chart';
import type { CurveAxes, CurveTrace } from '../charts/curve/curve-trace';
import { selectStyles } from '../controls/select-styles';
import { speakerSelect } from '../controls/speaker-select';
import { groupColour } from '../group-colour';
import { sharedStyles } from '../theme/shared-styles';
import { beforeAfterAxes, beforeAfterTraces } from './before-after-curves';

/** The response of one speaker before its settings and through the processor. */
@customElement('ll-before-after')
export class BeforeAfter extends LitElement {
  static override styles = [
    sharedStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      .select {
        max-width: 22rem;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);
  private kept: {
    readonly proof: ProofState;
    readonly label: ChannelLabel;
    readonly traces: readonly CurveTrace[];
    readonly axes: CurveAxes;
  } | null = null;

  override render() {
    const { state } = this.follow;
    const proof = state?.proof;
    if (!state || !proof) return nothing;
    const channel = this.shown(state, proof);
    if (!channel) return nothing;
    const { traces, axes } = this.drawn(proof, channel);
    const title = msg(str`${channel.label} before its settings and through the processor`);
    return html`<h2>${title}${proof.simulated ? msg(' (simulated)') : ''}</h2>
      ${speakerSelect(this, state.layout.channels, channel.label)}
      ${
        traces.length === 0
          ? html`<p>${msg(str`No response of ${channel.label} was read; play it again.`)}</p>`
          : html`<ll-curve-chart .label=${title} .traces=${traces} .axes=${axes}></ll-curve-chart>
              <p class="soft small">
                ${msg(str`1/24 octave, each against its own mean of ${channel.kind === 'sub' ? msg('40 to 80') : msg('500 to 2000')} Hz. Through the processor the subs play along below the crossover.`)}
              </p>`
      }`;
  }

  /** The selected speaker, else that of the first failed line, else the first. */
  private shown({ layout }: BenchState, proof: ProofState): Channel | undefined {
    const failed = proof.lines.find(({ verdict }) => verdict === 'fail')?.channels[0];
    return (
      layout.channels.find(({ label }) => label === this.selected) ??
      layout.channels.find(({ label }) => label === failed) ??
      layout.channels[0]
    );
  }

  /** The same curves as long as the proof is the same: the level moves many times a second. */
  private drawn(proof: ProofState, { label, group }: Channel) {
    const { kept } = this;
    if (kept?.proof === proof && kept.label === label) return kept;
    const traces = beforeAfterTraces(proof, label, groupColour(group));
    this.kept = { proof, label, traces, axes: beforeAfterAxes(traces) };
    return this.kept;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-before-after': BeforeAfter;
  }
}
