import { nothing, svg, type SVGTemplateResult } from 'lit';
import type { Channel } from '../../src/system/channel';

/** The range of a speaker's direction as an arc around the listener; one angle is a short line. */
export function drawRange(nominal: Channel, radius: number): SVGTemplateResult | typeof nothing {
  if (nominal.kind === 'sub') return nothing;
  const { azimuthRange, azimuthDegrees } = nominal;
  if (!azimuthRange) {
    const [inner, outer] = [
      pointAt(azimuthDegrees, radius - 24),
      pointAt(azimuthDegrees, radius + 24),
    ];
    return svg`<path class="range one" d="M${inner}L${outer}"></path>`;
  }
  return svg`<path class="range" d=${arcPath(azimuthRange, radius)}></path>`;
}

/** An arc from one azimuth to a larger one, degrees, the short way over the left. */
export function arcPath([from, to]: readonly [number, number], radius: number): string {
  const large = to - from > 180 ? 1 : 0;
  const r = radius.toFixed(1);
  return `M${pointAt(from, radius)}A${r} ${r} 0 ${large} 0 ${pointAt(to, radius)}`;
}

/** A point around the listener: 0° is up, positive to the left. */
function pointAt(azimuthDegrees: number, radius: number): string {
  const angle = (azimuthDegrees * Math.PI) / 180;
  return `${(-Math.sin(angle) * radius).toFixed(1)} ${(-Math.cos(angle) * radius).toFixed(1)}`;
}
