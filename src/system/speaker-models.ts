import type { Channel, ChannelLabel, GroupId, Layout } from './channel';

/** Which speakers are of one model, and what their sheets say; all of it declared, none measured. */
export interface SpeakerModels {
  /** The group whose model a group's speakers are, too; a group that is not there has its own. */
  readonly sameAs: Readonly<Partial<Record<GroupId, GroupId>>>;
  /** Whether a group's speakers are of one model; where nothing is said pairs are, subs are not. */
  readonly alike: Readonly<Partial<Record<GroupId, boolean>>>;
  /** Where a speaker is 3 dB down by its sheet, Hz. */
  readonly sheetF3Hz: Readonly<Partial<Record<ChannelLabel, number>>>;
}

export const noModelsDeclared: SpeakerModels = { sameAs: {}, alike: {}, sheetF3Hz: {} };

/** Where a sheet's −3 dB may lie, Hz. */
export const sheetRangeHz = [10, 400] as const;

/** The speakers of a layout that are of one model, in its order. */
export interface SpeakerModel {
  readonly channels: readonly Channel[];
  /** By the model's sheet; null when none was typed. */
  readonly sheetF3Hz: number | null;
}

/** The models of a layout, each speaker in one of them, in the layout's order. */
export function modelsOf(layout: Layout, models: SpeakerModels): SpeakerModel[] {
  const found = new Map<string, Channel[]>();
  for (const channel of layout.channels) {
    const key = isAlike(models, channel.group) ? modelGroup(models, channel.group) : channel.label;
    found.set(key, [...(found.get(key) ?? []), channel]);
  }
  return [...found.values()].map((channels) => ({
    channels,
    sheetF3Hz: channels.flatMap(({ label }) => models.sheetF3Hz[label] ?? [])[0] ?? null,
  }));
}

/** Whether a group's speakers are of one model. */
export function isAlike({ alike }: SpeakerModels, group: GroupId): boolean {
  return alike[group] ?? group !== 'subs';
}

/** The group that a group's model is called by: another one's, or its own. */
export function modelGroup(models: SpeakerModels, group: GroupId): GroupId {
  const other = models.sameAs[group] ?? group;
  const joins = isAlike(models, group) && isAlike(models, other);
  return joins && (group === 'subs') === (other === 'subs') ? other : group;
}

/** Says that the speakers of a group are of one model, or that they differ. */
export function withAlike(models: SpeakerModels, group: GroupId, alike: boolean): SpeakerModels {
  return { ...models, alike: { ...models.alike, [group]: alike } };
}

/**
 * Says that a group's speakers are of another group's model, or, with null, of their own. Groups
 * that were of the group's model go along. Throws RangeError for subs with mains.
 */
export function withSameModel(
  models: SpeakerModels,
  group: GroupId,
  other: GroupId | null,
): SpeakerModels {
  if (other === null) {
    const others = Object.entries(models.sameAs).filter(([key]) => key !== group);
    return { ...models, sameAs: Object.fromEntries(others) };
  }
  if ((group === 'subs') !== (other === 'subs')) {
    throw new RangeError(`subs and mains share no model, got ${group} with ${other}`);
  }
  const leader = models.sameAs[other] ?? other;
  if (leader === group) return models;
  const follows = Object.entries(models.sameAs).map(
    ([key, of]) => [key, of === group ? leader : of] as const,
  );
  return { ...models, sameAs: { ...Object.fromEntries(follows), [group]: leader } };
}

/**
 * Types the sheet's −3 dB of a model's speakers, Hz; null takes it back. Throws RangeError for a
 * frequency outside 10 to 400 Hz and for no speakers.
 */
export function withSheetF3(
  models: SpeakerModels,
  labels: readonly ChannelLabel[],
  hz: number | null,
): SpeakerModels {
  const [first] = labels;
  if (first === undefined) throw new RangeError('a model has at least one speaker, got none');
  const [low, high] = sheetRangeHz;
  if (hz !== null && !(hz >= low && hz <= high)) {
    throw new RangeError(`hz must lie between ${low} and ${high}, got ${hz}`);
  }
  const others = Object.entries(models.sheetF3Hz).filter(
    ([label]) => !labels.some((one) => one === label),
  );
  const sheetF3Hz = Object.fromEntries(others);
  return { ...models, sheetF3Hz: hz === null ? sheetF3Hz : { ...sheetF3Hz, [first]: hz } };
}
