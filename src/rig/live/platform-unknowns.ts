/**
 * What this kind of computer keeps to itself whatever the browser says: handhelds that play at call
 * level while a microphone is open. Their browsers name them in the user agent; tablets of the kind
 * name a desktop system and give themselves away by touch.
 */
import { msg } from '@lit/localize';
export function platformUnknowns({ userAgent, maxTouchPoints } = navigatorFacts()): string[] {
  const handheld = /\b(iPhone|iPad|iPod)\b/.test(userAgent);
  const tablet = /\bMacintosh\b/.test(userAgent) && maxTouchPoints > 1;
  if (!handheld && !tablet) return [];
  return [msg('level of the output: this device plays at call level while its microphone is open')];
}

function navigatorFacts(): { userAgent: string; maxTouchPoints: number } {
  return { userAgent: navigator.userAgent, maxTouchPoints: navigator.maxTouchPoints };
}
