import { msg, str } from '@lit/localize';
import { html, nothing } from 'lit';
import type { HandoverCurve } from '../../../src/handover/handover';
import { curveAt, curvePath } from '../../charts/curve-path';
import { dbText, hzText, isNumber } from '../../../src/locale/number-text';

/** Drawing units; from 20 Hz to 20 kHz, and from 15 dB above to 35 dB below the mean. */
const wide = 140;
const high = 24;
const decades = 3;
const octaves = [32, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16_000];
const [topDb, spanDb] = [15, 50];

const xAt = (hz: number): number => (Math.log10(hz / 20) / decades) * wide;
const yAt = (db: number): number => ((topDb - db) / spanDb) * high;

/** A response small enough for a line of a table; nothing where none was read. */
export function responseLine(response: HandoverCurve | null) {
  if (!response) return nothing;
  const { hz, db } = response;
  const grid = [100, 1000, 10_000].map((one) => `M${xAt(one).toFixed(1)} 0V${high}`).join('');
  return html`<svg
    class="response"
    viewBox="0 0 ${wide} ${high}"
    role="img"
    aria-label=${inWords(response)}
  >
    <path class="grid" d="${grid}M0 ${yAt(0)}H${wide}"></path>
    <path class="trace" d=${curvePath(hz, db, { x: xAt, y: yAt })}></path>
  </svg>`;
}

/** The line for who cannot see it: its level at the octaves from 32 Hz to 16 kHz. */
function inWords({ hz, db }: HandoverCurve): string {
  const said = octaves.flatMap((one) => {
    const level = curveAt(hz, db, one);
    return isNumber(level) ? [`${hzText(one)} ${dbText(level, 0)}`] : [];
  });
  return said.length === 0 ? msg('Response not told') : msg(str`Response: ${said.join(', ')}`);
}
