import { nothing, svg, type SVGTemplateResult } from 'lit';
import type { Channel } from '../../src/system/channel';

/** Half the side of every symbol, drawing units. */
export const symbolHalf = 9;

/**
 * A bed speaker is a cone seen from above, mouth to the listener; a height a ring, with an arrow in
 * it when it is bounced; a sub a square.
 */
export function speakerShape(channel: Channel, bounced = false): SVGTemplateResult {
  switch (channel.kind) {
    case 'height':
      return svg`<circle class="shape" r="8"></circle>
        ${bounced ? svg`<path class="bounce" d="M0 4.5V-4M-3.2-1L0-4.2L3.2-1"></path>` : nothing}`;
    case 'sub':
      return svg`<path class="shape" d="M-8-8H8V8H-8z"></path>`;
    case 'bed':
      return svg`<path class="shape" transform="rotate(${-channel.azimuthDegrees})" d="M-4.5-7h9L9 6H-9z"></path>`;
  }
}
