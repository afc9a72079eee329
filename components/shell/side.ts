import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Activity, Bench } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import { wiringMarks } from '../patch/wiring-marks';
import '../plan/channel-facts';
import '../plan/plan-drawing';
import '../plan/plan-key';
import { sharedStyles } from '../theme/shared-styles';
import type { StageId } from './stages';

/** The plan that stays in view through all stages, with what is known of the selected speaker. */
@customElement('ll-side')
export class Side extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: block;
      }

      aside {
        display: flex;
        flex-direction: column;
        gap: var(--space-3);
        padding: var(--space-3) var(--space-4) var(--space-5);
      }

      .fold {
        display: none;
      }

      @media (max-width: 56rem) {
        aside {
          padding: 0 var(--space-3);
        }

        .fold {
          display: flex;
          align-items: center;
          justify-content: space-between;
          min-height: var(--target);
          padding: 0;
          border: 0;
          background: none;
          text-align: left;
        }

        .fold svg {
          width: 1rem;
          height: 1rem;
          fill: none;
          stroke: currentColor;
          stroke-width: 2;
        }

        .fold[aria-expanded='true'] svg {
          rotate: 180deg;
        }

        .folded {
          display: none;
        }

        .content {
          padding-bottom: var(--space-4);
        }
      }

      @media (min-width: 34rem) and (max-width: 56rem) {
        .content:not(.folded) {
          display: grid;
          grid-template-columns: minmax(0, 20rem) minmax(0, 1fr);
          gap: var(--space-4);
        }
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  @property({ attribute: false }) stage: StageId = 'plan';
  /** Whether the tuner opened or folded the plan on a narrow screen; null leaves it to the stage. */
  @state() private wanted: boolean | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    // The Plan stage draws the plan itself, to be edited.
    const open = this.wanted ?? this.stage === 'patch';
    const { activity } = state;
    const known = state.readings?.layout === state.layout.name ? state.readings : null;
    // While a take is read, each speaker moves to its place as soon as it is known.
    const readings = activity.kind === 'reading' ? activity : known;
    return html`<aside aria-label=${msg('Plan of the room')}>
      <button class="fold" aria-expanded=${open} @click=${() => (this.wanted = !open)}>
        <span
          ><b>${msg('Plan')}</b>
          ${this.selected ?? msg(str`${state.layout.channels.length} speakers`)}</span
        >
        <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M2 5l6 6 6-6"></path></svg>
      </button>
      <div class="content ${open ? '' : 'folded'}">
        <ll-plan-drawing
          .layout=${state.layout}
          .readings=${readings}
          .system=${state.document.system}
          .selected=${this.selected}
          .playing=${soundingChannel(activity)}
          .marks=${wiringMarks(state)}
          .nominalMetres=${state.document.conditions.referenceDistanceMetres}
        ></ll-plan-drawing>
        ${
          this.selected === null
            ? html`<ll-plan-key .layout=${state.layout} .readings=${readings}></ll-plan-key>`
            : html`<ll-channel-facts
                .bench=${this.bench}
                .selected=${this.selected}
              ></ll-channel-facts>`
        }
      </div>
    </aside>`;
  }
}

/** The speaker that sounds now, whoever plays it. */
function soundingChannel(activity: Activity): string | null {
  if (activity.kind === 'playing' || activity.kind === 'walking') return activity.channel;
  return activity.kind === 'noise' ? activity.noise.request.channel : null;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-side': Side;
  }
}
