import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Readings } from '../../src/reading/reading';
import type { Bench } from '../../src/session/bench';
import type { Channel, ChannelLabel, Layout } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { asSentence } from '../plan/layout-words';
import '../plan/speaker-icon';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import { wiringFindings, wiringTitle } from './findings';

/** Stage 2: which output feeds which speaker. */
@customElement('ll-patch')
export class PatchStage extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    css`
      td {
        vertical-align: middle;
      }

      .speaker {
        display: inline-flex;
        align-items: center;
        gap: var(--space-2);
        white-space: nowrap;
      }

      .label {
        min-width: 3.2rem;
        font-weight: 700;
      }

      th:nth-child(2),
      td:nth-child(2),
      th:nth-child(3),
      td:nth-child(3) {
        text-align: left;
      }

      td:first-child,
      th:first-child {
        width: 5rem;
      }

      @container (max-width: 34rem) {
        .name {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const { layout, readings } = state;
    const findings = wiringFindings(layout, readings);
    return html`<div class="lede">
        <h1>${wiringTitle(layout, readings)}</h1>
      </div>
      <div class="sheets">
        ${
          findings.length === 0
            ? nothing
            : html`<section class="sheet wide" aria-labelledby="findings">
                <h2 id="findings" class="signal">What to change</h2>
                <ul class="list">
                  ${findings.map((sentence) => html`<li>${sentence}</li>`)}
                </ul>
              </section>`
        }
        <section class="sheet" aria-labelledby="order">
          <h2 id="order">Channels of the take, in the order of its WAV file</h2>
          <table>
            <thead>
              <tr>
                <th scope="col">Channel</th>
                <th scope="col">Feeds</th>
                <th scope="col">Last take</th>
              </tr>
            </thead>
            <tbody>
              ${layout.channels.map((channel, index) =>
                this.renderRow(channel, index, layout, readings),
              )}
            </tbody>
          </table>
        </section>
        <div class="column">
          <section class="sheet" aria-labelledby="byear">
            <h2 id="byear">Check by ear</h2>
            <p>
              This version has no wire check of its own yet. In Probe each speaker sweeps alone, in
              this order, and the plan shows whose turn it is: listen that the sound comes from
              there.
            </p>
          </section>
          <section class="sheet" aria-labelledby="cautions">
            <h2 id="cautions">Moving plugs</h2>
            <ul class="list">
              ${cautionsFor(layout).map((caution) => html`<li>${caution}</li>`)}
            </ul>
          </section>
        </div>
      </div>`;
  }

  private renderRow(
    channel: Channel,
    index: number,
    layout: Layout,
    readings: Readings | null,
  ): TemplateResult {
    return html`<tr class=${channel.label === this.selected ? 'pick' : ''}>
      <td class="num">${index + 1}</td>
      <td>
        <span class="speaker">
          <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
          <span class="label">${channel.label}</span>
          <span class="name">${asSentence(channel.name)}</span>
        </span>
      </td>
      <td>${lastTake(channel, layout, readings)}</td>
    </tr>`;
  }
}

function lastTake(
  channel: Channel,
  layout: Layout,
  readings: Readings | null,
): TemplateResult | string {
  const reading =
    readings?.layout === layout.name
      ? readings.channels.find((one) => one.channel === channel.label)
      : undefined;
  if (!reading) return html`<span class="soft">not played yet</span>`;
  if (reading.faults.some((fault) => fault.kind === 'silent')) {
    return html`<span class="signal">silent</span>`;
  }
  if (reading.polarity === 'inverted') return html`<span class="signal">heard, inverted</span>`;
  if (channel.kind === 'sub' || reading.polarity === 'cannot tell') {
    return 'heard, polarity cannot be told';
  }
  return 'heard, polarity normal';
}

function cautionsFor(layout: Layout): string[] {
  const cautions = [
    'Switch amplifiers off before a plug is moved, and turn the volume down before they come back on.',
    'Work on mains, inside walls and in ceilings follows local codes and is left to licensed trades.',
  ];
  const subs = layout.channels.filter((channel) => channel.kind === 'sub').length;
  if (subs > 0) {
    cautions.push(
      'From a computer a sub is reached only through LFE or through redirected bass. The processor plays LFE 10 dB louder in band and low-passes it near 120 Hz (ITU-R BS.775).',
    );
  }
  if (subs > 1) {
    cautions.push(
      'Subs that share one output sound together: probe them one at a time, with the others switched off.',
    );
  }
  if (layout.channels.some((channel) => channel.kind === 'height')) {
    cautions.push('Ladders: a second person holds them, and no sweep starts while someone is up.');
  }
  return cautions;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-patch': PatchStage;
  }
}
