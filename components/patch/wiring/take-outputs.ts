import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Readings } from '../../../src/reading/reading';
import type { Channel, ChannelLabel, Layout } from '../../../src/system/channel';
import { asSentence } from '../../plan/layout-words';
import { RevealController } from '../../controls/reveal-controller';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { patchSheetAddress } from '../patch-sheets';

/** The channels of a take in the order of its file, and what the last take heard of each. */
@customElement('ll-take-outputs')
export class TakeOutputs extends LitElement {
  static override styles = [
    sharedStyles,
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

      th,
      td {
        text-align: left;
      }

      @media (max-width: 34rem) {
        .name {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) layout: Layout | null = null;
  @property({ attribute: false }) readings: Readings | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;

  constructor() {
    super();
    new RevealController(this, patchSheetAddress('wiring'));
  }

  override render() {
    const { layout } = this;
    if (!layout) return nothing;
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${msg('Channel')}</th>
          <th scope="col">${msg('Feeds')}</th>
          <th scope="col">${msg('Last take')}</th>
        </tr>
      </thead>
      <tbody>
        ${layout.channels.map((channel, index) => this.row(channel, index, layout))}
      </tbody>
    </table>`;
  }

  private row(channel: Channel, index: number, layout: Layout) {
    return html`<tr
      class=${channel.label === this.selected ? 'pick' : ''}
      data-place=${channel.label}
    >
      <td class="num">${index + 1}</td>
      <td>
        <span class="speaker">
          <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
          <span class="label">${channel.label}</span>
          <span class="name">${asSentence(channel.name)}</span>
        </span>
      </td>
      <td>${lastTake(channel, layout, this.readings)}</td>
    </tr>`;
  }
}

function lastTake(channel: Channel, layout: Layout, readings: Readings | null) {
  const reading =
    readings?.layout === layout.name
      ? readings.channels.find((one) => one.channel === channel.label)
      : undefined;
  if (!reading) return html`<span class="soft">${msg('not played yet')}</span>`;
  if (reading.faults.some((fault) => fault.kind === 'silent')) {
    return html`<span class="signal">${msg('silent')}</span>`;
  }
  if (reading.polarity === 'inverted')
    return html`<span class="signal">${msg('heard, inverted')}</span>`;
  if (channel.kind === 'sub' || reading.polarity === 'cannot tell') {
    return msg('heard, polarity cannot be told');
  }
  return msg('heard, polarity normal');
}

declare global {
  interface HTMLElementTagNameMap {
    'll-take-outputs': TakeOutputs;
  }
}
