const surround =
  'front-left,front-right,front-center,lfe,rear-left,rear-right,side-left,side-right';
/** Ten channels are a 5.1.4 to Chromium, and it says so to the audio server. */
const heights =
  'front-left,front-right,front-center,lfe,side-left,side-right,top-front-left,top-front-right,top-rear-left,top-rear-right';

/** Names of the virtual interface's outputs for the audio server: those that Chromium gives them. */
export function channelMap(outputs: number): string {
  if (outputs === 10) return heights;
  const more = Array.from({ length: Math.max(0, outputs - 8) }, (_, n) => `aux${n}`);
  return [...surround.split(',').slice(0, outputs), ...more].join(',');
}
