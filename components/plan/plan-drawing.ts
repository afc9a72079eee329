import { LitElement, html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { textWidth } from '../charts/text-width';
import { askToSelect } from '../events';
import { groupColour } from '../group-colour';
import { sharedStyles } from '../theme/shared-styles';
import { partnersOf } from './partner';
import { placeLabels, type Box } from './place-labels';
import { placeRingLabels } from './place-ring-labels';
import {
  placeSpeakers,
  ringRadii,
  scaleOf,
  type MeasuredChannels,
  type PlacedSpeaker,
} from './place-speakers';
import { planDrawingStyles } from './plan-drawing-styles';
import { speakerName } from './speaker-name';
import { speakerShape, symbolHalf } from './speaker-shape';

/** Kept free above and below all that is drawn, pixels. */
const margin = 6;

/** The plan to scale, seen from above; also the navigator. Arrow keys walk from speaker to speaker. */
@customElement('ll-plan-drawing')
export class PlanDrawing extends LitElement {
  static override styles = [sharedStyles, planDrawingStyles];

  @property({ attribute: false }) layout: Layout | null = null;
  @property({ attribute: false }) readings: MeasuredChannels | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  /** The channel that sounds now. */
  @property({ attribute: false }) playing: string | null = null;
  @property({ type: Number }) nominalMetres = 2.4;
  /** Half the side of the square drawing, pixels: text keeps its size whatever the width. */
  @state() private reach = 144;
  private frame = 0;
  /** Drawn in the next frame: a new height in this one would set off the observer again. */
  private readonly sizes = new ResizeObserver(([entry]) => {
    const width = entry?.contentRect.width ?? 0;
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => (this.reach = Math.max(90, Math.round(width / 2))));
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.sizes.observe(this);
    document.fonts.addEventListener('loadingdone', this.measureAgain);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizes.disconnect();
    cancelAnimationFrame(this.frame);
    document.fonts.removeEventListener('loadingdone', this.measureAgain);
  }

  private readonly measureAgain = (): void => this.requestUpdate();

  protected override render(): TemplateResult | typeof nothing {
    const { layout, reach } = this;
    if (!layout) return nothing;
    const placed = placeSpeakers(layout, this.readings, this.nominalMetres);
    const perMetre = scaleOf(placed, reach);
    const rings = ringRadii(placed).filter((radius) => radius * perMetre < reach);
    const symbols = placed.map((one) => ({
      x: one.rightMetres * perMetre,
      y: one.backMetres * perMetre,
    }));
    const listener: Box = { x: 0, y: 0, halfWidth: 9, halfHeight: 9 };
    const font = `700 13px ${getComputedStyle(this).getPropertyValue('--face')}`;
    const labels = placeLabels(
      placed.map((one, index) => ({
        x: symbols[index]?.x ?? 0,
        y: symbols[index]?.y ?? 0,
        halfWidth: textWidth(one.channel.label, font) / 2 + 2,
        halfHeight: 8,
      })),
      { reach, symbol: symbolHalf, obstacles: [listener] },
    );
    const taken = [
      ...labels,
      ...symbols.map((at) => ({ ...at, halfWidth: symbolHalf, halfHeight: symbolHalf })),
      listener,
    ];
    const outer = Math.max(0, ...rings) * perMetre;
    const top = Math.min(-outer, ...taken.map((box) => box.y - box.halfHeight)) - margin;
    const bottom = Math.max(outer, ...taken.map((box) => box.y + box.halfHeight)) + margin;
    return html`<svg viewBox="${-reach} ${top} ${2 * reach} ${bottom - top}">
      ${rings.map((radius) => svg`<circle class="ring" r=${(radius * perMetre).toFixed(1)}></circle>`)}
      ${placeRingLabels(
        rings.map((metres) => ({ text: `${metres} m`, radius: metres * perMetre })),
        reach,
        taken,
      ).map(
        (one) =>
          svg`<text class="ring-label" aria-hidden="true" x=${one.x.toFixed(1)} y=${(one.y + 3.5).toFixed(1)}>${one.text}</text>`,
      )}
      <path class="listener" d="M0-8L7 7H-7z"><title>Listener, facing up</title></path>
      <g
        role="listbox"
        aria-label="Speakers seen from above, front at the top"
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
      aria-label=${speakerName(one, layout, faults)}
      data-channel=${channel.label}
      color=${groupColour(channel.group)}
      @click=${() => askToSelect(this, chosen ? null : channel.label)}
    >
      <rect class="hit" x=${at.x - 14} y=${at.y - 14} width="28" height="28"></rect>
      <rect class="hit" x=${label.x - label.halfWidth} y=${label.y - 9} width=${2 * label.halfWidth} height="18"></rect>
      ${leader(at, label)}
      <g transform="translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})">
        <circle class="halo" r="14"></circle>
        ${speakerShape(channel)}
        ${faults.length > 0 ? svg`<path class="flag" d="M5-13l6 10h-12z"></path>` : nothing}
      </g>
      <text class="label" x=${label.x.toFixed(1)} y=${(label.y + 4).toFixed(1)}>${channel.label}</text>
    </g>`;
  }

  private faultsOf(label: ChannelLabel): string[] {
    const reading = this.readings?.channels.find((one) => one.channel === label);
    if (!reading) return [];
    const inverted = reading.polarity === 'inverted' ? ['polarity inverted'] : [];
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

/** A thin line from a symbol to a label that had to stand away from it. */
function leader(at: { x: number; y: number }, label: Box): SVGTemplateResult | typeof nothing {
  const x = Math.max(label.x - label.halfWidth, Math.min(at.x, label.x + label.halfWidth));
  const y = Math.max(label.y - label.halfHeight, Math.min(at.y, label.y + label.halfHeight));
  if (Math.hypot(x - at.x, y - at.y) < symbolHalf + 9) return nothing;
  return svg`<path class="leader" d="M${at.x.toFixed(1)} ${at.y.toFixed(1)}L${x.toFixed(1)} ${y.toFixed(1)}"></path>`;
}
