import type { SessionDocument } from './document';

/** Whether a change of the document makes the last climb say nothing of the sound any more. */
export function forgetsClimb(before: SessionDocument, after: SessionDocument): boolean {
  if (before.rig !== after.rig || before.layout !== after.layout) return true;
  if (before.live === after.live) return false;
  const { output, microphone, gainDb, routes, lfeOutput, microphoneInput, loopback } = before.live;
  const now = after.live;
  return (
    output?.id !== now.output?.id ||
    microphone?.id !== now.microphone?.id ||
    gainDb !== now.gainDb ||
    routes !== now.routes ||
    lfeOutput !== now.lfeOutput ||
    microphoneInput !== now.microphoneInput ||
    loopback !== now.loopback
  );
}
