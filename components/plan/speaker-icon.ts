import { LitElement, css, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Channel } from '../../src/system/channel';
import { groupColour } from '../group-colour';
import { speakerShape } from './speaker-shape';

/** A speaker's shape in its group's hue, for tables; its label always stands beside it. */
@customElement('ll-speaker-icon')
export class SpeakerIcon extends LitElement {
  static override styles = css`
    :host {
      display: inline-block;
      flex: none;
      width: 1.3rem;
      height: 1.3rem;
    }

    svg {
      display: block;
      width: 100%;
      height: 100%;
    }

    .shape {
      fill: var(--sheet);
      stroke: currentColor;
      stroke-width: 2.2;
    }
  `;

  @property({ attribute: false }) channel: Channel | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { channel } = this;
    if (!channel) return nothing;
    return html`<svg viewBox="-11 -11 22 22" aria-hidden="true" color=${groupColour(channel.group)}>
      ${svg`${speakerShape(channel)}`}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-speaker-icon': SpeakerIcon;
  }
}
