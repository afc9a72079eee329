import { lengthText } from '../locale/length-text';
import type { Channel, ChannelLabel } from '../system/channel';
import type { ChannelReading } from './reading';

/** What distances say beside one another and beside what was declared. */
export interface GeometryFinding {
  /** 'speaker': one does not fit. 'seat': the microphone stands elsewhere. 'tape': all are off alike.
   * 'unclear': they do not fit one seat. 'typed': the processor has another distance. 'pair': left and
   * right differ. 'agrees': everything fits. */
  readonly kind: 'speaker' | 'seat' | 'tape' | 'unclear' | 'typed' | 'pair' | 'agrees';
  readonly channels: readonly ChannelLabel[];
  /** Whether something should be done about it. */
  readonly wantsAction: boolean;
  readonly sentence: string;
}

/** A speaker that is heard directly, and how far it is by its arrival. */
export interface DirectSpeaker {
  readonly channel: Channel;
  readonly reading: ChannelReading;
  readonly metres: number;
}

/** "2.40 m". */
export function sayMetres(metres: number): string {
  return lengthText(metres);
}
