let context: CanvasRenderingContext2D | null = null;

/** Width of a text in pixels, in the given CSS font. */
export function textWidth(text: string, font: string): number {
  context ??= document.createElement('canvas').getContext('2d');
  if (!context) return text.length * 7;
  context.font = font;
  return context.measureText(text).width;
}
