import { msg } from '@lit/localize';
import { css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../later-element';
import { lengthUnit } from '../../src/locale/length-text';
import type { ChannelLabel } from '../../src/system/channel';
import { askToSelect } from '../events';
import { sharedStyles } from '../theme/shared-styles';
import { ChartSize } from './chart-size';
import { chartStyles } from './chart-styles';
import { laneFaults, laneSentence, laneWords, type Lane } from './lane';
import { layOutLanes, type DrawnLane, type LanesLayout } from './lane-layout';
import { laneCopy, laneTable } from './lane-numbers';
import './number-table';
import { textWidth } from './text-width';

const at = (value: number): string => value.toFixed(1);

/** Arrivals at the microphone, one lane a speaker: envelope, first arrival, distance. */
@customElement('ll-arrival-lanes')
export class ArrivalLanes extends LaterElement {
  static override styles = [
    sharedStyles,
    chartStyles,
    css`
      .lanes {
        cursor: pointer;
      }

      .lane rect {
        fill: transparent;
      }

      .lane:hover rect {
        fill: var(--track);
        opacity: 0.4;
      }

      .lane[aria-selected='true'] rect {
        fill: var(--wash);
        opacity: 1;
      }

      .lane[aria-selected='true'] .label {
        font-weight: 700;
      }

      .envelope {
        opacity: 0.34;
      }

      .lane.earlier :is(.envelope, .arrival, .ceiling) {
        opacity: 0.2;
      }

      .line {
        stroke: var(--rule);
      }

      .line.open {
        stroke: var(--edge);
        stroke-dasharray: 2 5;
      }

      .arrival {
        stroke-width: 2.5;
      }

      .ceiling {
        stroke-width: 2;
        stroke-dasharray: 3 2;
      }

      svg text.soft {
        fill: var(--soft);
      }

      svg .signal {
        fill: var(--signal);
        font-weight: 700;
      }
    `,
  ];

  @property({ attribute: false }) lanes: readonly Lane[] = [];
  @property({ type: Number }) referenceDistanceMetres = 0;
  /** Metres per second. */
  @property({ type: Number }) speedOfSound = 343.2;
  @property({ attribute: false }) selected: ChannelLabel | null = null;

  private readonly size = new ChartSize(this);

  protected override firstUpdated(): void {
    // Texts are placed by their width: place them again once the page's face has loaded.
    void document.fonts.ready.then(() => this.requestUpdate());
  }

  private press(event: KeyboardEvent): void {
    const labels = this.lanes.map(({ channel }) => channel);
    const index = this.selected === null ? -1 : labels.indexOf(this.selected);
    const targets: Readonly<Record<string, number>> = {
      ArrowDown: index + 1,
      ArrowUp: index - 1,
      Home: 0,
      End: labels.length - 1,
    };
    const target = targets[event.key];
    const label = labels[Math.max(0, Math.min(labels.length - 1, target ?? -1))];
    if (target === undefined || label === undefined) return;
    event.preventDefault();
    askToSelect(this, label);
  }

  override render() {
    if (this.lanes.length === 0)
      return html`<p class="soft">${msg('No speakers in the plan.')}</p>`;
    const face = getComputedStyle(this).fontFamily || 'sans-serif';
    const layout = layOutLanes({
      lanes: this.lanes,
      referenceDistanceMetres: this.referenceDistanceMetres,
      speedOfSound: this.speedOfSound,
      width: this.size.width || 640,
      textWidth: (text, strong) => textWidth(text, `${strong ? '700 ' : ''}12.5px ${face}`),
    });
    const { lanes } = this;
    const active = this.lanes.findIndex(({ channel }) => channel === this.selected);
    return html`<figure aria-label=${msg('Arrivals at the microphone')}>
      <div
        class="lanes"
        role="listbox"
        tabindex="0"
        aria-label=${msg('Arrivals, one lane a speaker')}
        aria-activedescendant=${active < 0 ? nothing : `lane-${String(active)}`}
        @keydown=${(event: KeyboardEvent) => this.press(event)}
      >
        <svg width=${layout.width} height=${layout.height} role="presentation">
          ${this.axes(layout)} ${layout.lanes.map((lane, i) => this.lane(lane, i, layout))}
        </svg>
      </div>
      <ll-number-table
        caption=${msg('Arrival, distance, level, polarity and roll-off of each speaker')}
        .numbers=${{ table: () => laneTable(lanes), copy: () => laneCopy(lanes) }}
      ></ll-number-table>
    </figure>`;
  }

  private axes({ ticks, top, bottom }: LanesLayout) {
    return svg`<g aria-hidden="true">
      ${ticks.map(
        ({ x, time, path }) => svg`
          <line class="grid" x1=${at(x)} x2=${at(x)} y1=${top - 6} y2=${bottom + 4}></line>
          <text class="tick" x=${at(x)} y=${top - 12} text-anchor="middle">${time}</text>
          <text class="tick" x=${at(x)} y=${bottom + 18} text-anchor="middle">${path}</text>`,
      )}
      <text class="tick" x="2" y=${top - 12}>ms</text>
      <text class="tick" x="2" y=${bottom + 18}>${lengthUnit()}</text>
    </g>`;
  }

  private lane(drawn: DrawnLane, index: number, layout: LanesLayout) {
    const { lane, top, base, envelope, arrival, ceiling } = drawn;
    const { left, right, width, laneHeight } = layout;
    const words = laneWords(lane);
    const busy = lane.stage === 'sweeping' || lane.stage === 'reading';
    const faults = laneFaults(lane.reading).join(', ');
    const read = lane.stage === 'read';
    const marks = [arrival, ceiling].flatMap((mark) =>
      mark && mark.text !== '' ? [mark.text] : [],
    );
    const open = !read || !lane.reading?.curves;
    return svg`<g
      class="lane ${lane.earlier ? 'earlier' : ''}"
      id="lane-${index}"
      role="option"
      data-channel=${lane.channel}
      data-stage=${lane.stage}
      aria-selected=${lane.channel === this.selected ? 'true' : 'false'}
      aria-label=${laneSentence(lane, marks)}
      @click=${() => askToSelect(this, lane.channel)}
    >
      <rect x="-4" width=${width + 8} y=${top + 2} height=${laneHeight - 4}></rect>
      <text class="label" x="2" y=${base - 1}>${lane.channel}</text>
      <line class="line ${open ? 'open' : ''}" x1=${left} x2=${at(right)} y1=${base} y2=${base}></line>
      ${envelope ? svg`<path class="envelope" fill=${lane.colour} d=${envelope}></path>` : nothing}
      ${
        arrival
          ? svg`<line class="arrival" stroke=${lane.colour} x1=${at(arrival.x)} x2=${at(arrival.x)}
              y1=${top + 3} y2=${base + 3}></line>
            <text class="halo strong" x=${at(arrival.textX)} y=${at(arrival.textY + 4)}>${arrival.text}</text>`
          : nothing
      }
      ${
        ceiling
          ? svg`<line class="ceiling" stroke=${lane.colour} x1=${at(ceiling.x)} x2=${at(ceiling.x)}
              y1=${top + 4} y2=${base}></line>
            <text class="halo" x=${at(ceiling.textX)} y=${at(ceiling.textY + 4)}>${ceiling.text}</text>`
          : nothing
      }
      ${
        read
          ? svg`<text class="halo soft" x=${at(right)} y=${base - 6} text-anchor="end"
              >${words}${words && faults ? ', ' : ''}<tspan class="signal">${faults}</tspan></text>`
          : svg`<text class="halo ${busy ? 'signal' : 'soft'}" x=${left + 8} y=${base - 6}>${words}</text>`
      }
    </g>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-arrival-lanes': ArrivalLanes;
  }
}
