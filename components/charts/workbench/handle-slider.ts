import { html } from 'lit';
import { nearestStep, stepCursor } from '../cursor-steps';
import type { CurveLayout } from '../curve/curve-layout';
import { hzText } from '../../../src/locale/number-text';
import type { ChartHandle, HandleMove } from './chart-handle';

/** Width of the strip that takes a finger, pixels. */
const grip = 32;
/** Steps of a long stride. */
const stride = 3;

/**
 * Makes handles follow pointer and keys. A pointer, which moves once a frame, moves its handle in a
 * task after that frame; a key moves its handle while it is down and sets it when it is let go: so
 * no task does all of it.
 */
export class HandleDrag {
  private readonly tell: (move: HandleMove) => void;
  private wanted: HandleMove | null = null;
  private last: HandleMove | null = null;
  private soon: ReturnType<typeof setTimeout> | 0 = 0;
  /** Whether it is a key that holds, and not a pointer. */
  private byKey = false;

  constructor(tell: (move: HandleMove) => void) {
    this.tell = tell;
  }

  /** True from the moment a pointer or a key holds a handle until it lets go. */
  get holds(): boolean {
    return this.last !== null;
  }

  /** The slider over a handle's line. */
  slider(handle: ChartHandle, layout: CurveLayout) {
    const { plot, xAt } = layout;
    const { id, label, hz, stepsHz, end } = handle;
    const x = Math.max(plot.left, Math.min(plot.right, xAt(hz)));
    const middle = plot.top + (plot.bottom - plot.top) * 0.4;
    const [top, bottom] = end === 'top' ? [plot.top - 10, middle] : [middle, plot.bottom + 10];
    return html`<div
      class="handle ${end}"
      role="slider"
      tabindex="0"
      data-handle=${id}
      style="left:${x - grip / 2}px;top:${top}px;width:${grip}px;height:${bottom - top}px"
      aria-label=${label}
      aria-valuemin=${stepsHz[0] ?? hz}
      aria-valuemax=${stepsHz.at(-1) ?? hz}
      aria-valuenow=${hz}
      aria-valuetext=${hzText(hz)}
      @pointerdown=${(event: PointerEvent) => this.take(event, handle)}
      @pointermove=${(event: PointerEvent) => this.pull(event, handle, layout)}
      @pointerup=${() => this.letGo()}
      @pointercancel=${() => this.letGo()}
      @keydown=${(event: KeyboardEvent) => this.press(event, handle)}
      @keyup=${() => this.release()}
      @blur=${() => this.release()}
    ></div>`;
  }

  private take(event: PointerEvent, { id, hz }: ChartHandle): void {
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    this.last = { id, value: hz, done: false };
    this.byKey = false;
  }

  private pull(event: PointerEvent, { id, stepsHz }: ChartHandle, layout: CurveLayout): void {
    const frame = (event.currentTarget as HTMLElement).parentElement;
    if (this.last?.id !== id || !frame) return;
    const hz = layout.valueAt(event.clientX - frame.getBoundingClientRect().left);
    const value = nearestStep(stepsHz, Math.max(1, hz));
    if (value === null) return;
    this.wanted = { id, value, done: false };
    this.soon ||= setTimeout(() => this.flush());
  }

  private flush(): void {
    clearTimeout(this.soon);
    this.soon = 0;
    const { wanted, last } = this;
    this.wanted = null;
    if (!wanted || !last || wanted.value === last.value) return;
    this.last = wanted;
    this.tell(wanted);
  }

  private letGo(): void {
    this.flush();
    const { last } = this;
    this.last = null;
    if (last) this.tell({ ...last, done: true });
  }

  private press(event: KeyboardEvent, { id, hz, stepsHz }: ChartHandle): void {
    const from = nearestStep(stepsHz, hz);
    const value = stepCursor(stepsHz, from, event.key, event.shiftKey, stride);
    if (value === null) return;
    event.preventDefault();
    this.last = { id, value, done: false };
    this.byKey = true;
    this.tell(this.last);
  }

  /** A key that goes up while a pointer holds the handle lets nothing go. */
  private release(): void {
    if (!this.byKey) return;
    this.byKey = false;
    this.letGo();
  }
}
