import type { GroupId } from '../src/system/channel';

const colours: Record<GroupId, string> = {
  fronts: 'var(--front)',
  centre: 'var(--centre)',
  wides: 'var(--wide)',
  sides: 'var(--surround)',
  backs: 'var(--rear)',
  'front heights': 'var(--height)',
  'middle heights': 'var(--height)',
  'back heights': 'var(--height)',
  subs: 'var(--sub)',
};

/** The hue of a group of speakers, as a CSS value that follows the theme. */
export function groupColour(group: GroupId): string {
  return colours[group];
}
