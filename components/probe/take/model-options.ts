import { msg, str } from '@lit/localize';
import type { GroupId, Layout } from '../../../src/system/channel';
import {
  isAlike,
  modelGroup,
  withAlike,
  withSameModel,
  type SpeakerModels,
} from '../../../src/system/speaker-models';
import { groupName } from '../../propose/group-words';

/** One thing that can be said of a group's model. */
export interface ModelOption {
  readonly words: string;
  readonly chosen: boolean;
  readonly choose: (models: SpeakerModels) => SpeakerModels;
}

/** What can be said of a group: of one model, each its own, or of another group's model. */
export function modelOptions(
  group: GroupId,
  layout: Layout,
  models: SpeakerModels,
): readonly ModelOption[] {
  const many = layout.channels.filter((one) => one.group === group).length > 1;
  const alike = isAlike(models, group) || !many;
  const leader = modelGroup(models, group);
  const alone = (next: SpeakerModels): SpeakerModels => withSameModel(next, group, null);
  const others = groupsOf(layout).filter(
    (other) => other !== group && group !== 'subs' && other !== 'subs',
  );
  return [
    {
      words: many ? msg('of one model') : msg('a model of its own'),
      chosen: alike && leader === group,
      choose: (now) => alone(withAlike(now, group, true)),
    },
    ...(many
      ? [
          {
            words: msg('each its own'),
            chosen: !alike,
            choose: (now: SpeakerModels) => withAlike(now, group, false),
          },
        ]
      : []),
    ...others.map((other) => ({
      words: msg(str`as ${groupName(other, layout).toLowerCase()}`),
      chosen: alike && leader === other,
      choose: (now: SpeakerModels) =>
        withSameModel(withAlike(withAlike(now, other, true), group, true), group, other),
    })),
  ];
}

/** Groups of a layout, in its order. */
export function groupsOf({ channels }: Layout): GroupId[] {
  return [...new Set(channels.map(({ group }) => group))];
}
