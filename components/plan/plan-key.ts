import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Channel, Layout } from '../../src/system/channel';
import { sharedStyles } from '../theme/shared-styles';
import type { MeasuredChannels } from './place-speakers';
import { kindInWords } from './speaker-name';
import { speakerShape } from './speaker-shape';

const kinds: readonly Channel['kind'][] = ['bed', 'height', 'sub'];

/** What the shapes of the plan mean and how many of each there are. */
@customElement('ll-plan-key')
export class PlanKey extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
        align-content: start;
      }

      li {
        display: flex;
        align-items: center;
        gap: var(--space-2);
      }

      ul {
        padding: 0;
        list-style: none;
        display: grid;
        gap: var(--space-1);
      }

      svg {
        width: 1.4rem;
        height: 1.4rem;
        flex: none;
      }

      .shape {
        fill: var(--sheet);
        stroke: var(--ink);
        stroke-width: 2;
      }
    `,
  ];

  @property({ attribute: false }) layout: Layout | null = null;
  @property({ attribute: false }) readings: MeasuredChannels | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const channels = this.layout?.channels;
    if (!channels) return nothing;
    return html`<ul>
        ${kinds.map((kind) => {
          const some = channels.filter((channel) => channel.kind === kind);
          const first = some[0];
          if (!first) return nothing;
          return html`<li>
            <svg viewBox="-11 -11 22 22" aria-hidden="true">
              ${svg`${speakerShape({ ...first, azimuthDegrees: 0 })}`}
            </svg>
            <span>${kindInWords(kind, some.length)}</span>
          </li>`;
        })}
      </ul>
      <p class="soft small">
        ${msg(str`${this.standing()} Pick a speaker to see what is known of it.`)}
      </p>`;
  }

  private standing(): string {
    if (!this.readings)
      return msg('Dashed: distance not known yet, drawn at the reference distance.');
    return this.layout?.channels.some((channel) => channel.kind === 'sub')
      ? msg(
          'Speakers stand at their measured distances. Subs stay dashed: the delay inside them is no distance.',
        )
      : msg('Speakers stand at their measured distances.');
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-plan-key': PlanKey;
  }
}
