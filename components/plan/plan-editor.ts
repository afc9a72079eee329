import { msg, str } from '@lit/localize';
import { localeInForce } from '../../src/locale/locale-in-force';
import { LitElement, html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import type { Channel, ChannelLabel } from '../../src/system/channel';
import type { DeclaredPlace } from '../../src/system/declared-system';
import { moveSpeaker } from '../../src/system/move-speaker';
import { standingOffset, standingPlace, type DeclaredPlan } from '../../src/system/standing-place';
import { BenchController } from '../bench-controller';
import { askToSelect } from '../events';
import { groupColour } from '../group-colour';
import { sharedStyles } from '../theme/shared-styles';
import { arrangePlan, labelFont, type Arrangement } from './arrange-plan';
import { declare, declaredPlan, isBusy } from './declared-plan';
import { drawDirection, drawReadout, readoutFont } from './draw-direction';
import { drawGround, drawLeader } from './draw-ground';
import { DrawingReach } from './drawing-reach';
import { placeSpeakers } from './place-speakers';
import { movableName, placeInWords } from './place-words';
import { planDrawingStyles } from './plan-drawing-styles';
import { planEditorStyles } from './plan-editor-styles';
import { stepPlace } from './snap-place';
import { dragTo, takeHold, type SpeakerDrag } from './speaker-drag';
import { speakerShape } from './speaker-shape';

/** The plan as it is declared: speakers are dragged, or moved with the arrow keys. */
@customElement('ll-plan-editor')
export class PlanEditor extends LitElement {
  static override styles = [sharedStyles, planDrawingStyles, planEditorStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  @state() private drag: SpeakerDrag | null = null;
  @state() private refusal: string | null = null;
  @state() private said = '';
  private arrangement: Arrangement | null = null;
  private arranged: readonly unknown[] = [];
  private readonly follow = new BenchController(this);
  private readonly size = new DrawingReach(this, 200, () => (this.arranged = []));

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.drag = null;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const plan = declaredPlan(state);
    const { layout, system } = plan;
    const frame = this.drag?.frame ?? this.arrange(plan);
    const { reach, top, bottom } = frame;
    const busy = isBusy(state);
    const refusal = this.drag?.refusal ?? this.refusal;
    const pointed = this.drag?.label ?? this.selectedHere(plan);
    return html`<svg
        class=${busy ? 'still' : ''}
        viewBox="${-reach} ${top} ${2 * reach} ${bottom - top}"
        role="group"
        aria-label=${msg('Plan seen from above, front at the top')}
        @click=${this.letGo}
      >
        ${drawGround(frame, system)}
        <path class="listener" d="M0-8L7 7H-7z"><title>${msg('Main seat, facing up')}</title></path>
        ${pointed ? drawDirection(plan, pointed, this.placeNow(plan, pointed), frame) : nothing}
        ${layout.channels.map((channel, index) => this.renderSpeaker(plan, channel, index, frame))}
        ${this.drag?.moved ? drawReadout(plan, this.drag, readoutFont(this)) : nothing}
      </svg>
      <p
        class="small said ${refusal ? 'signal' : 'soft'}"
        role=${refusal ? 'alert' : nothing}
        id="how"
      >
        ${
          refusal ??
          (busy
            ? msg('Nothing on the plan changes while a take runs.')
            : msg(
                'Drag a speaker, or move it with the arrow keys: left and right turn it around the seat, up and down move it away and closer; with Shift five times as far.',
              ))
        }
      </p>
      <p class="unseen" role="status">${this.said}</p>`;
  }

  /** Arranged anew only when what is arranged changed: the bench tells much else. */
  private arrange({ layout, system, nominalMetres }: DeclaredPlan): Arrangement {
    const key = [localeInForce(), layout, system, nominalMetres, this.size.reach];
    if (this.arrangement && key.every((one, index) => one === this.arranged[index])) {
      return this.arrangement;
    }
    const placed = placeSpeakers(layout, null, nominalMetres, system);
    this.arrangement = arrangePlan(placed, system, this.size.reach, labelFont(this));
    this.arranged = key;
    return this.arrangement;
  }

  private renderSpeaker(
    plan: DeclaredPlan,
    channel: Channel,
    index: number,
    frame: Arrangement,
  ): SVGTemplateResult {
    const { label } = channel;
    const dragged = this.drag?.label === label && this.drag.moved;
    const place = this.placeNow(plan, label);
    const offset = standingOffset(plan, label, place);
    const at = { x: offset.rightMetres * frame.perMetre, y: offset.backMetres * frame.perMetre };
    const text = frame.labels[index] ?? { ...at, halfWidth: 0, halfHeight: 0 };
    const chosen = label === this.selected;
    const bounced = plan.system.bounced.includes(label);
    const classes = [
      'speaker',
      channel.kind,
      chosen ? 'chosen' : '',
      place.distanceMetres === null ? 'unmeasured' : '',
      dragged ? 'dragged' : '',
      dragged && this.drag?.refusal ? 'refused' : '',
    ];
    return svg`<g
      class=${classes.filter((one) => one !== '').join(' ')}
      role="button"
      aria-roledescription=${msg('movable speaker')}
      tabindex="0"
      aria-pressed=${chosen ? 'true' : 'false'}
      aria-label=${movableName(channel, place, bounced)}
      aria-describedby="how"
      data-channel=${label}
      color=${groupColour(channel.group)}
      @focus=${() => this.select(label)}
      @keydown=${(event: KeyboardEvent) => this.step(event, label)}
      @pointerdown=${(event: PointerEvent) => this.hold(event, label)}
      @touchstart=${this.keepPage}
      @pointermove=${this.move}
      @pointerup=${this.drop}
      @pointercancel=${this.cancel}
      @click=${(event: Event) => event.stopPropagation()}
    >
      <rect class="hit" x=${at.x - 16} y=${at.y - 16} width="32" height="32"></rect>
      ${
        dragged
          ? nothing
          : svg`<rect class="hit" x=${text.x - text.halfWidth} y=${text.y - 9} width=${2 * text.halfWidth} height="18"></rect>
            ${drawLeader(at, text)}`
      }
      <g transform="translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})">
        <circle class="halo" r="14"></circle>
        ${speakerShape({ ...channel, ...place }, bounced)}
      </g>
      ${dragged ? nothing : svg`<text class="label" x=${text.x.toFixed(1)} y=${(text.y + 4).toFixed(1)}>${label}</text>`}
    </g>`;
  }

  private selectedHere({ layout }: DeclaredPlan): ChannelLabel | null {
    return layout.channels.find(({ label }) => label === this.selected)?.label ?? null;
  }

  private placeNow(plan: DeclaredPlan, label: ChannelLabel): DeclaredPlace {
    return this.drag?.label === label ? this.drag.place : standingPlace(plan, label);
  }

  private select(label: ChannelLabel): void {
    if (label !== this.selected) askToSelect(this, label);
  }

  /** A click beside all speakers picks none. */
  private readonly letGo = (): void => {
    if (this.selected !== null) askToSelect(this, null);
  };

  private hold(event: PointerEvent, label: ChannelLabel): void {
    const { state } = this.follow;
    const group = event.currentTarget as SVGGElement;
    if (event.button !== 0 || !state || !this.arrangement) return;
    event.preventDefault();
    group.focus({ preventScroll: true });
    this.select(label);
    if (isBusy(state) || this.drag) return;
    group.setPointerCapture(event.pointerId);
    this.refusal = null;
    this.drag = takeHold(declaredPlan(state), label, this.arrangement, this.pointOf(event));
  }

  /** Chromium heeds no touch-action inside a drawing: without this a finger scrolls the page. */
  private readonly keepPage = (event: TouchEvent): void => {
    const { state } = this.follow;
    if (state && !isBusy(state) && event.cancelable) event.preventDefault();
  };

  private readonly move = (event: PointerEvent): void => {
    const { state } = this.follow;
    if (this.drag && state) {
      this.drag = dragTo(this.drag, declaredPlan(state), this.pointOf(event));
    }
  };

  private readonly drop = (event: PointerEvent): void => {
    this.move(event);
    const { drag } = this;
    this.drag = null;
    if (drag?.moved) this.put(drag.label, drag.place, drag.refusal);
  };

  private readonly cancel = (): void => {
    this.drag = null;
  };

  private step(event: KeyboardEvent, label: ChannelLabel): void {
    const { state } = this.follow;
    if (event.key === 'Escape') return this.cancel();
    if (!state || isBusy(state) || event.altKey || event.ctrlKey || event.metaKey) return;
    const plan = declaredPlan(state);
    const place = stepPlace(plan, label, standingPlace(plan, label), event);
    if (!place) return;
    event.preventDefault();
    this.put(label, place, null);
  }

  /** Puts a speaker at its new place in the document, when it can stand there. */
  private put(label: ChannelLabel, place: DeclaredPlace, refusal: string | null): void {
    const { state } = this.follow;
    if (!state) return;
    const plan = declaredPlan(state);
    const before = placeInWords(standingPlace(plan, label));
    this.refusal =
      before === placeInWords(place)
        ? refusal
        : (declare(this.bench, msg(str`Move ${label}`), moveSpeaker(plan, label, place)) ??
          refusal);
    if (this.refusal === null) this.said = `${label}, ${placeInWords(place)}`;
  }

  private pointOf(event: PointerEvent): { x: number; y: number } {
    const box = this.renderRoot.querySelector('svg')?.getBoundingClientRect();
    const frame = this.arrangement;
    if (!box || !frame || box.width === 0) return { x: 0, y: 0 };
    const scale = (2 * frame.reach) / box.width;
    return {
      x: (event.clientX - box.left) * scale - frame.reach,
      y: (event.clientY - box.top) * scale + frame.top,
    };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-plan-editor': PlanEditor;
  }
}
