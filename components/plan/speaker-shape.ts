import { svg, type SVGTemplateResult } from 'lit';
import type { Channel } from '../../src/system/channel';

/** Half the side of every symbol, drawing units. */
export const symbolHalf = 9;

/** A bed speaker is a cone seen from above, mouth to the listener; a height a ring; a sub a square. */
export function speakerShape(channel: Channel): SVGTemplateResult {
  switch (channel.kind) {
    case 'height':
      return svg`<circle class="shape" r="8"></circle>`;
    case 'sub':
      return svg`<path class="shape" d="M-8-8H8V8H-8z"></path>`;
    case 'bed':
      return svg`<path class="shape" transform="rotate(${-channel.azimuthDegrees})" d="M-4.5-7h9L9 6H-9z"></path>`;
  }
}
