import type { SpeakerSpec } from './room-spec';

type Complex = readonly [number, number];

/**
 * Complex response of a speaker without its room at one frequency: its box as an analogue
 * high-pass (closed s²/(s² + s/Q + 1), vented the fourth-order Butterworth), and its low-pass.
 */
export function speakerResponse(
  speaker: Pick<SpeakerSpec, 'box' | 'lowPassHz'>,
  hz: number,
): Complex {
  const { box, lowPassHz } = speaker;
  let response =
    box.kind === 'closed'
      ? highPass(hz / box.resonanceHz, box.q)
      : multiply(
          highPass(hz / box.tuningHz, 1 / (2 * Math.sin(Math.PI / 8))),
          highPass(hz / box.tuningHz, 1 / (2 * Math.cos(Math.PI / 8))),
        );
  if (lowPassHz !== undefined) {
    const low = divide([1, 0], denominator(hz / lowPassHz, Math.SQRT1_2));
    response = multiply(response, multiply(low, low));
  }
  return response;
}

/** s²/(s² + s/Q + 1) at s = i·ratio. */
function highPass(ratio: number, q: number): Complex {
  return divide([-ratio * ratio, 0], denominator(ratio, q));
}

function denominator(ratio: number, q: number): Complex {
  return [1 - ratio * ratio, ratio / q];
}

export function multiply(a: Complex, b: Complex): Complex {
  return [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
}

function divide(a: Complex, b: Complex): Complex {
  const power = b[0] * b[0] + b[1] * b[1];
  return [(a[0] * b[0] + a[1] * b[1]) / power, (a[1] * b[0] - a[0] * b[1]) / power];
}
