const surround =
  'front-left,front-right,front-center,lfe,rear-left,rear-right,side-left,side-right';

/** Names of the virtual interface's outputs for the audio server: a 7.1 first, then unnamed ones. */
export function channelMap(outputs: number): string {
  const more = Array.from({ length: Math.max(0, outputs - 8) }, (_, n) => `aux${n}`);
  return [...surround.split(',').slice(0, outputs), ...more].join(',');
}
