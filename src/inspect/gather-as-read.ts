import type { GatheredSweeps } from '../reading/gather-sweeps';
import type { GroundedTake } from '../reading/ground-take';
import { createResponder } from '../reading/impulse-responses';
import { gatherChannel } from '../reading/read-one';
import { gatherReference } from '../reading/reference-sweeps';
import type { ChannelLabel } from '../system/channel';

/**
 * The sweeps of one channel as the reading of the whole take gathers them: the reference speaker's
 * held against its marks, another's with the noise of the first segment of the same sweep, which the
 * reading uses for all of them.
 */
export function gatherAsRead({ ground, audio }: GroundedTake, label: ChannelLabel): GatheredSweeps {
  const { schedule, clock, checks, shared } = ground;
  if (label === schedule.reference) return gatherReference(ground, audio.samples).sweeps;
  const sweep = JSON.stringify(
    schedule.segments.find(({ channel }) => channel === label)?.sweep ?? null,
  );
  const alike = schedule.segments
    .map((segment, index) => ({ segment, check: checks[index] }))
    .filter(({ segment, check }) => {
      return check?.spoilt === null && JSON.stringify(segment.sweep) === sweep;
    });
  const first =
    alike.find(({ segment }) => segment.channel === schedule.reference) ?? alike[0] ?? null;
  const { noise } = createResponder(audio.samples, clock, schedule, shared);
  if (first) noise(first.segment, (first.check?.mend ?? null) !== null);
  return gatherChannel(ground, label, { samples: audio.samples, start: 0 });
}
