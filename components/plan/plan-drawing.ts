import { msg } from '@lit/localize';
import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../later-element';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { nothingDeclared, type DeclaredSystem } from '../../src/system/declared-system';
import { askToSelect } from '../events';
import { groupColour } from '../group-colour';
import { sharedStyles } from '../theme/shared-styles';
import { arrangePlan, labelFont } from './arrange-plan';
import { drawGround, drawLeader } from './draw-ground';
import { DrawingReach } from './drawing-reach';
import { partnersOf } from './partner';
import type { Box } from './place-labels';
import { drawMark, type PlanMark } from './plan-mark';
import { placeSpeakers, type MeasuredChannels, type PlacedSpeaker } from './place-speakers';
import { planDrawingStyles } from './plan-drawing-styles';
import { speakerName } from './speaker-name';
import { speakerShape } from './speaker-shape';

/** The plan to scale, seen from above; also the navigator. Arrow keys walk from speaker to speaker. */
@customElement('ll-plan-drawing')
export class PlanDrawing extends LaterElement {
  static override styles = [sharedStyles, planDrawingStyles];

  @property({ attribute: false }) layout: Layout | null = null;
  @property({ attribute: false }) readings: MeasuredChannels | null = null;
  /** Declared distances, bounced heights, the room and its seats. */
  @property({ attribute: false }) system: DeclaredSystem = nothingDeclared;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  /** The channel that sounds now. */
  @property({ attribute: false }) playing: string | null = null;
  /** What was found of the wiring. */
  @property({ attribute: false }) marks: ReadonlyMap<ChannelLabel, PlanMark> = new Map();
  @property({ type: Number }) nominalMetres = 2.4;
  private readonly size = new DrawingReach(this, 144);

  protected override render(): TemplateResult | typeof nothing {
    const { layout } = this;
    const { reach } = this.size;
    if (!layout) return nothing;
    const placed = placeSpeakers(layout, this.readings, this.nominalMetres, this.system);
    const font = labelFont(this);
    const arrangement = arrangePlan(placed, this.system, reach, font);
    const { symbols, labels, top, bottom } = arrangement;
    return html`<svg viewBox="${-reach} ${top} ${2 * reach} ${bottom - top}">
      ${drawGround(arrangement, this.system)}
      <path class="listener" d="M0-8L7 7H-7z"><title>${msg('Listener, facing up')}</title></path>
      <g
        role="listbox"
        aria-label=${msg('Speakers seen from above, front at the top')}
        @keydown=${this.walk}
      >
        ${placed.map((one, index) => this.renderSpeaker(one, index, symbols, labels, layout))}
      </g>
    </svg>`;
  }

  private renderSpeaker(
    one: PlacedSpeaker,
    index: number,
    symbols: readonly { x: number; y: number }[],
    labels: readonly Box[],
    layout: Layout,
  ): SVGTemplateResult {
    const { channel } = one;
    const at = symbols[index] ?? { x: 0, y: 0 };
    const label = labels[index] ?? { x: 0, y: 0, halfWidth: 0, halfHeight: 0 };
    const chosen = channel.label === this.selected;
    const faults = this.faultsOf(channel.label);
    const mark = this.marks.get(channel.label);
    const partner = partnersOf(channel, layout).some((other) => other.label === this.selected);
    const classes = [
      'speaker',
      channel.kind,
      chosen ? 'chosen' : '',
      partner ? 'partner' : '',
      one.located ? '' : 'unmeasured',
      channel.label === this.playing ? 'playing' : '',
      faults.length > 0 ? 'faulty' : '',
    ];
    const stop = this.selected === null ? index === 0 : chosen;
    return svg`<g
      class=${classes.join(' ').trim()}
      role="option"
      id="speaker-${index}"
      tabindex=${stop ? 0 : -1}
      aria-selected=${chosen ? 'true' : 'false'}
      aria-label=${speakerName(one, layout, mark ? [mark.words, ...faults] : faults)}
      data-channel=${channel.label}
      color=${groupColour(channel.group)}
      @click=${() => askToSelect(this, chosen ? null : channel.label)}
    >
      <rect class="hit" x=${at.x - 14} y=${at.y - 14} width="28" height="28"></rect>
      <rect class="hit" x=${label.x - label.halfWidth} y=${label.y - 9} width=${2 * label.halfWidth} height="18"></rect>
      ${drawLeader(at, label)}
      <g transform="translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})">
        <circle class="halo" r="14"></circle>
        ${speakerShape(channel, this.system.bounced.includes(channel.label))}
        ${faults.length > 0 ? svg`<path class="flag" d="M5-13l6 10h-12z"></path>` : nothing}
        ${mark ? drawMark(mark) : nothing}
      </g>
      <text class="label" x=${label.x.toFixed(1)} y=${(label.y + 4).toFixed(1)}>${channel.label}</text>
    </g>`;
  }

  private faultsOf(label: ChannelLabel): string[] {
    const reading = this.readings?.channels.find((one) => one.channel === label);
    if (!reading) return [];
    const inverted = reading.polarity === 'inverted' ? [msg('polarity inverted')] : [];
    return [...inverted, ...reading.faults.map((fault) => fault.kind)];
  }

  private readonly walk = (event: KeyboardEvent): void => {
    const channels = this.layout?.channels ?? [];
    const here = channels.findIndex((one) => one.label === this.selected);
    const next = nextIndex(event.key, here, channels.length);
    const channel = next === null ? undefined : channels[next];
    if (next === null || !channel) return;
    event.preventDefault();
    askToSelect(this, channel.label);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<SVGElement>(`#speaker-${next}`)?.focus(),
    );
  };
}

function nextIndex(key: string, here: number, count: number): number | null {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return (here + 1) % count;
    case 'ArrowLeft':
    case 'ArrowUp':
      return (here <= 0 ? count : here) - 1;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    case 'Enter':
    case ' ':
      return Math.max(here, 0);
    default:
      return null;
  }
}
