import { msg, str } from '@lit/localize';
import { layoutFromName } from '../system/layout';
import type { Schedule } from '../take/schedule';
import { scheduleId } from '../take/schedule-id';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { findContradiction } from './find-contradiction';
import { parseJson, type FileKind } from './parse-json';
import { scheduleSchema } from './schedule-schema';

const take: FileKind = {
  name: 'take',
  format: 'leadline-take',
  versions: [1, 2],
  get advice() {
    return msg('Use the take.json that was saved together with the take.wav that was played.');
  },
};

/**
 * Reads the text of take.json. Refuses, as a Trouble that says where and why, what is no take, what
 * contradicts itself, and what was changed after it was saved.
 */
export function parseSchedule(text: string): Schedule | Trouble {
  const schedule = parseJson<Schedule>(text, take, scheduleSchema);
  if (isTrouble(schedule)) return schedule;
  const finding =
    findContradiction(schedule) ?? contradictsLayout(schedule) ?? contradictsId(schedule);
  if (finding === null) return schedule;
  return trouble('bad-file', msg(str`This take contradicts itself: ${finding}. ${take.advice}`));
}

function contradictsLayout(schedule: Schedule): string | null {
  const layout = layoutFromName(schedule.layout);
  if (isTrouble(layout)) return msg(str`its layout "${schedule.layout}" means nothing`);
  const has = layout.channels.map((channel) => channel.label);
  const stranger = schedule.channels.find((channel) => !has.includes(channel));
  return stranger === undefined
    ? null
    : msg(str`"channels" name ${stranger}, and layout ${schedule.layout} has ${has.join(', ')}`);
}

function contradictsId(schedule: Schedule): string | null {
  const ids = [scheduleId(schedule), idInVersion1(schedule)];
  return ids.includes(schedule.id)
    ? null
    : msg('it was changed after it was saved ("id" does not fit)');
}

/** The id a take of version 1 had: nothing in it was replayed louder. */
function idInVersion1(schedule: Schedule): string {
  const segments = schedule.segments.map((segment) => ({ ...segment, replayGainDb: undefined }));
  return scheduleId({ ...schedule, version: 1, segments });
}
