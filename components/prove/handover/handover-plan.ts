import { msg } from '@lit/localize';
import { html, svg } from 'lit';
import type { BenchState } from '../../../src/session/bench';
import { arrangePlan } from '../../plan/arrange-plan';
import { drawGround, drawLeader } from '../../plan/draw-ground';
import { placeSpeakers } from '../../plan/place-speakers';
import { speakerShape } from '../../plan/speaker-shape';

/** Half the width of the printed plan, drawing units. */
const reach = 150;

/** The plan to scale, in lines alone, for the page that stays; `font` is that of its labels. */
export function handoverPlan({ layout, readings, document }: BenchState, font: string) {
  const { system, conditions } = document;
  const known = readings?.layout === layout.name ? readings : null;
  const placed = placeSpeakers(layout, known, conditions.referenceDistanceMetres, system);
  const arrangement = arrangePlan(placed, system, reach, font);
  const { symbols, labels, top, bottom } = arrangement;
  return html`<svg
    class="plan"
    viewBox="${-reach} ${top} ${2 * reach} ${bottom - top}"
    role="img"
    aria-label=${msg('Plan to scale, seen from above')}
  >
    ${drawGround(arrangement, system)}
    <path class="listener" d="M0-8L7 7H-7z"></path>
    ${placed.map(({ channel, located }, index) => {
      const at = symbols[index] ?? { x: 0, y: 0 };
      const label = labels[index] ?? { x: 0, y: 0, halfWidth: 0, halfHeight: 0 };
      return svg`<g class="${channel.kind} ${located ? '' : 'unmeasured'}">
        ${drawLeader(at, label)}
        <g transform="translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})">
          ${speakerShape(channel, system.bounced.includes(channel.label))}
        </g>
        <text class="label" x=${label.x.toFixed(1)} y=${(label.y + 4).toFixed(1)}>${channel.label}</text>
      </g>`;
    })}
  </svg>`;
}
