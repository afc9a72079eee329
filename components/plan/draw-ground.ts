import { lengthText } from '../../src/locale/length-text';
import { msg, str } from '@lit/localize';
import { nothing, svg, type SVGTemplateResult } from 'lit';
import type { DeclaredSystem } from '../../src/system/declared-system';
import { wallsOf } from '../../src/system/room-outline';
import type { Arrangement } from './arrange-plan';
import type { Box } from './place-labels';
import { symbolHalf } from './speaker-shape';

/** What lies under the speakers: distance rings, the outline of the room, the other seats. */
export function drawGround(
  arrangement: Arrangement,
  system: DeclaredSystem,
): (SVGTemplateResult | SVGTemplateResult[] | typeof nothing)[] {
  const { rings, ringLabels, seats, seatLabels } = arrangement;
  return [
    drawRoom(arrangement, system),
    svg`<g clip-path=${system.room ? 'url(#inside)' : nothing}>
      ${rings.map((radius) => svg`<circle class="ring" r=${radius.toFixed(1)}></circle>`)}
    </g>`,
    ringLabels.map(
      (one) =>
        svg`<text class="ring-label" aria-hidden="true" x=${one.x.toFixed(1)} y=${(one.y + 3.5).toFixed(1)}>${one.text}</text>`,
    ),
    seats.map((at, index) => drawSeat(at, seatLabels[index], system.seats[index]?.name ?? '')),
  ];
}

function drawRoom(
  { perMetre }: Arrangement,
  { room }: DeclaredSystem,
): SVGTemplateResult | typeof nothing {
  if (!room) return nothing;
  const walls = wallsOf(room);
  const pixels = (metres: number): string => (metres * perMetre).toFixed(1);
  const [x, y] = [pixels(-walls.leftMetres), pixels(-walls.aheadMetres)];
  const [width, height] = [pixels(room.widthMetres), pixels(room.lengthMetres)];
  return svg`<clipPath id="inside">
      <rect x=${x} y=${y} width=${width} height=${height}></rect>
    </clipPath>
    <rect class="wall" x=${x} y=${y} width=${width} height=${height}>
      <title>${msg(str`Room, ${lengthText(room.lengthMetres)} by ${lengthText(room.widthMetres)}`)}</title>
    </rect>`;
}

function drawSeat(
  at: { x: number; y: number },
  label: Box | undefined,
  name: string,
): SVGTemplateResult {
  return svg`<g>
    <path class="seat" transform="translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})" d="M0-7L6 6H-6z"></path>
    ${
      label
        ? svg`${drawLeader(at, label)}<text class="seat-name" x=${label.x.toFixed(1)} y=${(label.y + 4).toFixed(1)}>${name}</text>`
        : nothing
    }
  </g>`;
}

/** A thin line from a symbol to a label that had to stand away from it. */
export function drawLeader(
  at: { x: number; y: number },
  label: Box,
): SVGTemplateResult | typeof nothing {
  const x = Math.max(label.x - label.halfWidth, Math.min(at.x, label.x + label.halfWidth));
  const y = Math.max(label.y - label.halfHeight, Math.min(at.y, label.y + label.halfHeight));
  if (Math.hypot(x - at.x, y - at.y) < symbolHalf + 9) return nothing;
  return svg`<path class="leader" d="M${at.x.toFixed(1)} ${at.y.toFixed(1)}L${x.toFixed(1)} ${y.toFixed(1)}"></path>`;
}
