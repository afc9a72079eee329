import { trimmedText } from '../../src/locale/number-text';
import { msg } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Channel, ChannelLabel, Layout } from '../../src/system/channel';
import { nothingDeclared, type DeclaredSystem } from '../../src/system/declared-system';
import { askToSelect } from '../events';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';
import { asSentence } from './layout-words';
import './speaker-icon';
import { directionInWords } from './speaker-name';

/** Where each speaker of the layout stands, and the range that ITU-R BS.2051 has for it. */
@customElement('ll-angle-table')
export class AngleTable extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      .speaker {
        display: inline-flex;
        align-items: center;
        gap: var(--space-2);
        min-height: 1.75rem;
        text-align: left;
        text-decoration: none;
      }

      .speaker:hover .label {
        text-decoration: underline;
      }

      .label {
        min-width: 3.2rem;
        font-weight: 700;
      }

      td,
      th {
        white-space: nowrap;
        vertical-align: middle;
      }

      @media (max-width: 34rem) {
        .name {
          display: none;
        }

        .range {
          display: block;
        }

        th,
        td {
          padding-inline: var(--space-1);
        }
      }
    `,
  ];

  @property({ attribute: false }) layout: Layout | null = null;
  @property({ attribute: false }) system: DeclaredSystem = nothingDeclared;
  @property({ attribute: false }) selected: ChannelLabel | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { layout } = this;
    if (!layout) return nothing;
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${msg('Speaker')}</th>
          <th scope="col">${msg('Direction')}</th>
          <th scope="col">${msg('Range')}</th>
          <th scope="col">${msg('Up')}</th>
        </tr>
      </thead>
      <tbody>
        ${layout.channels.map((channel) => this.renderRow(channel))}
      </tbody>
    </table>`;
  }

  private renderRow(channel: Channel): TemplateResult {
    const chosen = channel.label === this.selected;
    // The standard gives a sub no place, so that only a declared one says anything.
    const free = channel.kind === 'sub' && !this.system.places[channel.label];
    return html`<tr class=${chosen ? 'pick' : ''}>
      <th scope="row">
        <button
          class="plain speaker"
          aria-pressed=${chosen ? 'true' : 'false'}
          @click=${() => askToSelect(this, chosen ? null : channel.label)}
        >
          <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
          <span class="label">${channel.label}</span>
          <span class="name">${asSentence(channel.name)}</span>
        </button>
      </th>
      <td>
        ${free ? html`<span class="soft">${msg('anywhere')}</span>` : directionInWords(channel.azimuthDegrees)}
      </td>
      <td class="num">${rangeInWords(channel.azimuthRange)}</td>
      <td class="num">
        ${channel.kind === 'height' ? `${trimmedText(channel.elevationDegrees, 1)}°` : '–'}
        ${
          channel.kind === 'height' && channel.elevationRange
            ? html`<span class="soft range">${rangeInWords(channel.elevationRange)}</span>`
            : nothing
        }
      </td>
    </tr>`;
  }
}

function rangeInWords(range: readonly [number, number] | null): string {
  if (!range) return '–';
  const [a, b] = [Math.abs(range[0]), Math.abs(range[1])].sort((one, other) => one - other);
  return `${a ?? 0}–${b ?? 0}°`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-angle-table': AngleTable;
  }
}
