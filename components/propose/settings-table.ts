import { msg } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ChannelLabel } from '../../src/system/channel';
import '../charts/copy-button';
import { askToSelect } from '../events';
import '../plan/speaker-icon';
import { sharedStyles } from '../theme/shared-styles';
import type { ProposeView } from './propose-view';
import './reasons/reason-list';
import { settingsCopy, settingsRows, type SettingsRow } from './settings-rows';
import { settingsStyles } from './settings-styles';

/** The table of settings to type, each line opening to its reasons. */
@customElement('ll-settings-table')
export class SettingsTable extends LitElement {
  static override styles = [sharedStyles, settingsStyles];

  @property({ attribute: false }) view: ProposeView | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  @state() private open: ReadonlySet<ChannelLabel> = new Set();

  private toggle(label: ChannelLabel): void {
    const open = new Set(this.open);
    if (!open.delete(label)) open.add(label);
    this.open = open;
    askToSelect(this, label);
  }

  override render() {
    const { view } = this;
    if (!view) return nothing;
    return html`<table>
        <caption class="unseen">
          ${msg('Settings to type into the processor')}
        </caption>
        <thead>
          <tr>
            <th scope="col">${msg('Speaker')}</th>
            <th scope="col">${msg('Distance')}</th>
            <th scope="col">${msg('Level trim')}</th>
            <th scope="col">${msg('Crossover')}</th>
            <th scope="col" class="left">${msg('Polarity')}</th>
          </tr>
        </thead>
        <tbody>
          ${settingsRows(view).map((row) => this.row(row))}
        </tbody>
      </table>
      <ll-copy-button label=${msg('Copy settings')} .text=${settingsCopy(view)}></ll-copy-button>`;
  }

  private row(row: SettingsRow) {
    const { channel, polarity, warnings } = row;
    const { label, name } = channel;
    const open = this.open.has(label);
    return html`<tr class=${label === this.selected ? 'pick' : ''} data-channel=${label}>
        <th scope="row">
          <button
            aria-expanded=${open ? 'true' : 'false'}
            aria-controls="why-${label}"
            @click=${() => this.toggle(label)}
          >
            <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M5 2l6 6-6 6"></path></svg>
            <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
            <span class="num label">${label}</span>
            <span class="name">${name}</span>
            ${warnings.length > 0 ? html`<small class="signal">${msg('note')}</small>` : nothing}
            <span class="unseen">${msg(', reasons')}</span>
          </button>
        </th>
        ${valueCell(row.distance)} ${valueCell(row.level)}
        <td class="num">
          ${row.crossover}${row.chosen ? html`<small class="signal">${msg('set by you')}</small>` : nothing}
        </td>
        <td class="left">
          ${
            polarity.todo === null
              ? html`<span class="soft">${polarity.text}</span>`
              : html`<b class="signal">${polarity.text}</b><small>${polarity.todo}</small>`
          }
        </td>
      </tr>
      <tr class="why" id="why-${label}" ?hidden=${!open}>
        <td colspan="5">
          <dl>
            ${row.reasons.map(
              ({ of, reasons }) =>
                html`<dt>${of}</dt>
                  <dd>
                    <ll-reasons
                      .reasons=${reasons}
                      .readings=${this.view?.readings ?? null}
                    ></ll-reasons>
                  </dd>`,
            )}
            ${warnings.map(
              (warning) =>
                html`<dt class="signal">${msg('Note')}</dt>
                  <dd>${warning}</dd>`,
            )}
          </dl>
        </td>
      </tr>`;
  }
}

function valueCell(text: string) {
  return text === 'cannot tell'
    ? html`<td class="soft">${text}</td>`
    : html`<td class="num">${text}</td>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-settings-table': SettingsTable;
  }
}
