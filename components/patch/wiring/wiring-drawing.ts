import { msg, str } from '@lit/localize';
import { LitElement, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { styleMap } from 'lit/directives/style-map.js';
import type { Channel, ChannelLabel, Layout } from '../../../src/system/channel';
import type { ProcessorOutput, ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import type { WiredOutput, Wiring } from '../../../src/system/wiring/wiring';
import { buttonStyles } from '../../controls/button-styles';
import { askToSelect } from '../../events';
import { groupColour } from '../../group-colour';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { wiringDrawingStyles } from './wiring-drawing-styles';

/** The row of outputs in the sheet's order: plugs and speakers, free outputs open. */
@customElement('ll-wiring-drawing')
export class WiringDrawing extends LitElement {
  static override styles = [sharedStyles, buttonStyles, wiringDrawingStyles];

  @property({ attribute: false }) layout: Layout | null = null;
  @property({ attribute: false }) sheet: ProcessorSheet | null = null;
  @property({ attribute: false }) wiring: Wiring | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;

  override render() {
    const { layout, sheet, wiring } = this;
    if (!layout || !sheet || !wiring) return nothing;
    const wired = wiring.wired ? wiring.outputs : [];
    const conflicting = new Set(
      wiring.wired ? [] : wiring.conflicts.flatMap(({ outputs }) => outputs),
    );
    return html`<ol aria-label=${msg('Outputs of the processor, as its back has them')}>
      ${sheet.outputs.map((output) => {
        const one = wired.find((each) => each.output === output.id) ?? null;
        const channel = layout.channels.find(({ label }) => label === one?.channel) ?? null;
        return conflicting.has(output.id)
          ? this.conflict(output)
          : one && channel
            ? this.plugged(output, one, channel)
            : this.free(output);
      })}
    </ol>`;
  }

  private plugged({ name }: ProcessorOutput, { role }: WiredOutput, channel: Channel) {
    const { label, group } = channel;
    const chosen = label === this.selected;
    return html`<li class="wired">
      ${jack(name, groupColour(group))}
      <button
        class="end"
        aria-pressed=${chosen ? 'true' : 'false'}
        @click=${() => askToSelect(this, chosen ? null : label)}
      >
        <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
        <span class="label">${label}</span>
        <span>${channel.name}</span>
        ${role === label ? nothing : html`<span class="soft">${msg(str`plays as ${role}`)}</span>`}
      </button>
    </li>`;
  }

  private free({ name }: ProcessorOutput) {
    return html`<li class="free">
      ${jack(name, null)}
      <div class="end soft">${msg('open')}</div>
    </li>`;
  }

  private conflict({ name }: ProcessorOutput) {
    return html`<li class="conflict">
      ${jack(name, null)}
      <div class="end stop">${msg('in conflict')}</div>
    </li>`;
  }
}

/** The top of a cell: a piece of the panel with its socket; with a hue, a plug in it and its cable. */
function jack(name: string, colour: string | null) {
  const style = styleMap(colour === null ? {} : { color: colour });
  return html`<div class="panel">
      <span class="name">${name}</span>
      <svg viewBox="0 0 40 34" aria-hidden="true" style=${style}>
        ${svg`<circle class="socket" cx="20" cy="16" r="10"></circle><circle class="hole" cx="20" cy="16" r="3.5"></circle>`}
        ${colour === null ? nothing : svg`<path class="plug" d="M13 9h14v18l-3 7h-8l-3-7z"></path>`}
      </svg>
    </div>
    <div class="cable" style=${style}></div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-wiring-drawing': WiringDrawing;
  }
}
