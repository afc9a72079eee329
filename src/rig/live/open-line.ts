import { msg, str } from '@lit/localize';
import { eightOutputs } from '../../take/assign-outputs';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { Line, LineOptions, LineSound, MicLevel, OutputRoutes } from '../port';
import type { CaptureMessage } from './capture-message';
import { createLineBlocks, type LineBlocks } from './line-blocks';
import { createLinePlayer, type LinePlayer } from './line-player';
import { levelOf } from './level-of';
import { openAudio } from './open-audio';
import type { Output } from './open-output';
import { inputNotes } from './pick-inputs';
import { platformUnknowns } from './platform-unknowns';
import { failed } from './play-take';
import type { TakeDevices } from './take-devices';
import { createTakeEnding, watchPage } from './take-ending';

/** Opens a line on the chosen devices; see Rig.open. */
export async function openLine(
  devices: TakeDevices,
  options: LineOptions,
  onLevel: (level: MicLevel) => void,
): Promise<Line | Trouble> {
  const ending = createTakeEnding();
  watchPage(ending, options.signal);
  let opened = false;
  ending.atEnd(() => {
    if (opened && ending.reason) options.onEnd(ending.reason);
  });
  const prepare = (output: Output): Sounding | Trouble => {
    if (output.channels < 1) return noChannels();
    const player = createLinePlayer(output);
    const blocks = createLineBlocks(output.context.sampleRate, devices, options.onBlock);
    ending.atEnd(() => blocks.close());
    ending.atEnd(() => player.close());
    listening = blocks;
    return { player, blocks };
  };
  let listening: LineBlocks | null = null;
  const listen = (message: CaptureMessage): void => {
    if (message.kind === 'chunk') listening?.listen(message);
    else onLevel(levelOf(message));
  };
  try {
    const audio = await openAudio(devices, ending, prepare, listen);
    if (audio === null || isTrouble(audio)) {
      ending.finish();
      return audio ?? ending.reason ?? failed(msg('ended too early'));
    }
    const { microphone, output, ready } = audio;
    const { channels, context } = output;
    const inputs = ready.blocks.open();
    opened = true;
    return {
      sampleRate: context.sampleRate,
      simulated: false,
      notes: [...microphone.notes, ...inputNotes(inputs), msg(str`rate: ${context.sampleRate} Hz`)],
      unknown: [...microphone.unknown, ...platformUnknowns()],
      play(sound) {
        if (sound) requireSound(sound);
        if (ending.over) return;
        if (sound === null) return ready.player.play(null, 0);
        const index = outputOf(sound.channel, channels, options.routes ?? {});
        if (isTrouble(index)) return ending.end(index);
        ready.player.play(sound, index);
      },
      setGain(gainDb) {
        requireGain(gainDb);
        if (!ending.over) ready.player.setGain(gainDb);
      },
      close() {
        opened = false;
        ending.finish();
      },
    };
  } catch (error) {
    ending.finish();
    return ending.reason ?? failed(error instanceof Error ? error.message : String(error));
  }
}

interface Sounding {
  readonly player: LinePlayer;
  readonly blocks: LineBlocks;
}

function requireSound({ period, gainDb }: LineSound): void {
  if (period.length === 0) throw new RangeError('a period must have samples, got 0');
  for (const value of period) {
    if (!(Math.abs(value) <= 1 + 1e-6)) {
      throw new RangeError('a period must be numbers of at most 1');
    }
  }
  requireGain(gainDb);
}

function requireGain(gainDb: number): void {
  if (!(gainDb <= 0)) throw new RangeError(`gainDb must be at most 0, got ${gainDb}`);
}

/** A speaker without a route plays on its usual output; which that is, few outputs do not tell. */
function outputOf(
  channel: LineSound['channel'],
  channels: number,
  routes: OutputRoutes,
): number | Trouble {
  const output = routes[channel] ?? eightOutputs.indexOf(channel);
  if (output >= 0 && output < channels) return output;
  const here = channels === 1 ? msg('1 channel') : msg(str`${channels} channels`);
  return trouble(
    'no-output',
    output < 0
      ? msg(str`Speaker ${channel} has no output yet. Choose one for it in the routing table.`)
      : msg(
          str`Speaker ${channel} belongs on output ${output + 1}, and this output device has ${here}. Change its output or choose another device.`,
        ),
  );
}

function noChannels(): Trouble {
  return trouble(
    'no-output',
    msg('This output device has no channel to play on. Choose another output.'),
  );
}
