import { nothing, svg, type SVGTemplateResult } from 'lit';
import type { ChannelLabel } from '../../src/system/channel';
import type { DeclaredPlace } from '../../src/system/declared-system';
import { nominalChannel } from '../../src/system/place-notes';
import { standingOffset, type DeclaredPlan } from '../../src/system/standing-place';
import { textWidth } from '../charts/text-width';
import { groupColour } from '../group-colour';
import type { Arrangement } from './arrange-plan';
import { placeInWords } from './place-words';
import { drawRange } from './range-arc';
import type { SpeakerDrag } from './speaker-drag';

/** A ray from the seat to a speaker, and the range of its direction at its distance. */
export function drawDirection(
  plan: DeclaredPlan,
  label: ChannelLabel,
  place: DeclaredPlace,
  { perMetre }: Arrangement,
): SVGTemplateResult | typeof nothing {
  const nominal = nominalChannel(plan, label);
  if (!nominal) return nothing;
  const offset = standingOffset(plan, label, place);
  const [x, y] = [offset.rightMetres * perMetre, offset.backMetres * perMetre];
  return svg`<g color=${groupColour(nominal.group)}>
    ${drawRange(nominal, Math.hypot(x, y))}
    <path class="ray" d="M0 0L${x.toFixed(1)} ${y.toFixed(1)}"></path>
  </g>`;
}

/** Angle and distance beside a speaker while it is dragged, kept inside the drawing. */
export function drawReadout(
  plan: DeclaredPlan,
  { label, place, frame }: SpeakerDrag,
  font: string,
): SVGTemplateResult {
  const text = `${label} ${placeInWords(place)}`;
  const { rightMetres, backMetres } = standingOffset(plan, label, place);
  const most = Math.max(0, frame.reach - textWidth(text, font) / 2 - 4);
  const x = Math.max(-most, Math.min(most, rightMetres * frame.perMetre));
  const above = backMetres * frame.perMetre - 20;
  const y = above < frame.top + 14 ? above + 46 : above;
  return svg`<text class="readout" aria-hidden="true" x=${x.toFixed(1)} y=${y.toFixed(1)}>${text}</text>`;
}

/** The font of the readout of a drawing, for measuring it. */
export function readoutFont(drawing: Element): string {
  return `700 13px ${getComputedStyle(drawing).getPropertyValue('--mono')}`;
}
