import { html, nothing, type ReactiveControllerHost } from 'lit';
import { nearestStep, stepCursor } from './cursor-steps';
import type { Box } from './place-labels';

/** The chart a cursor runs over, as it is drawn now. */
export interface CursorGround {
  readonly plot: Box;
  readonly hzAt: (x: number) => number;
  /** Frequencies it stops at, rising. */
  readonly steps: readonly number[];
  /** Where it stands before it is moved, Hz. */
  readonly restingHz: number;
  /** Steps to an octave, for long strides. */
  readonly perOctave?: number;
}

/** A cursor in frequency: follows the pointer and the arrow keys, and rests when left. */
export class FrequencyCursor {
  /** Null while it rests. */
  hz: number | null = null;
  private readonly host: ReactiveControllerHost;
  private readonly ground: () => CursorGround | null;

  constructor(host: ReactiveControllerHost, ground: () => CursorGround | null) {
    this.host = host;
    this.ground = ground;
  }

  /** Lets a cursor rest whose step is gone. */
  keepTo(steps: readonly number[]): void {
    if (this.hz !== null && !steps.includes(this.hz)) this.hz = null;
  }

  /** The plane over the plot that takes pointer and keys; a slider in words for who cannot see it. */
  plane(label: string, sayAt: (hz: number) => string) {
    const ground = this.ground();
    if (!ground) return nothing;
    const { plot, hzAt } = ground;
    const hz = this.hz ?? ground.restingHz;
    const [least, most] = [hzAt(plot.left), hzAt(plot.right)].map((edge) => Math.round(edge));
    return html`<div
      class="cursor"
      role="slider"
      tabindex="0"
      style="left:${plot.left}px;top:${plot.top}px;width:${plot.right - plot.left}px;height:${
        plot.bottom - plot.top
      }px"
      aria-label=${label}
      aria-valuemin=${least ?? nothing}
      aria-valuemax=${most ?? nothing}
      aria-valuenow=${Math.round(hz)}
      aria-valuetext=${sayAt(hz)}
      @pointermove=${this.point}
      @pointerdown=${this.point}
      @pointerleave=${(event: PointerEvent) => {
        if (!(event.currentTarget as HTMLElement).matches(':focus')) this.move(null);
      }}
      @focus=${() => this.move(this.hz ?? this.resting())}
      @blur=${() => this.move(null)}
      @keydown=${this.press}
    ></div>`;
  }

  private move(hz: number | null): void {
    if (hz === this.hz) return;
    this.hz = hz;
    this.host.requestUpdate();
  }

  private resting(): number | null {
    const ground = this.ground();
    return ground && nearestStep(ground.steps, ground.restingHz);
  }

  private readonly point = (event: PointerEvent): void => {
    const ground = this.ground();
    if (!ground) return;
    const bounds = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const hz = ground.hzAt(ground.plot.left + event.clientX - bounds.left);
    this.move(nearestStep(ground.steps, hz));
  };

  private readonly press = (event: KeyboardEvent): void => {
    const ground = this.ground();
    if (!ground) return;
    const { steps, perOctave } = ground;
    const hz = stepCursor(steps, this.hz ?? this.resting(), event.key, event.shiftKey, perOctave);
    if (hz === null) return;
    event.preventDefault();
    this.move(hz);
  };
}
