import { amplitudeToDb } from '../../../dsp/level/decibels';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { Line, LineOptions, LineSound, MicLevel } from '../port';
import { createLineBlocks } from './line-blocks';
import { createLinePlayer, type LinePlayer } from './line-player';
import { openAudio } from './open-audio';
import type { Output } from './open-output';
import { failed } from './play-take';
import { fullScale } from './recorder';
import { routeOutputs } from './route-outputs';
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
  let player: LinePlayer | null = null;
  let blocks: ReturnType<typeof createLineBlocks> | null = null;
  const prepare = (output: Output): Trouble | null => {
    if (output.channels < 1) return noChannels();
    player = createLinePlayer(output);
    ending.atEnd(() => player?.close());
    blocks = createLineBlocks(output.context.sampleRate, devices, options.onBlock);
    return null;
  };
  try {
    const audio = await openAudio(devices, ending, prepare, (message) => {
      if (message.kind === 'chunk') {
        if (opened) blocks?.(message);
        return;
      }
      const { rms, peak } = message;
      const clipped = peak >= fullScale;
      onLevel({ rmsDb: amplitudeToDb(rms), peakDb: amplitudeToDb(peak), clipped });
    });
    if (audio === null || isTrouble(audio)) {
      ending.finish();
      return audio ?? ending.reason ?? failed('ended too early');
    }
    opened = true;
    const { microphone, output } = audio;
    const { channels, context } = output;
    return {
      sampleRate: context.sampleRate,
      simulated: false,
      notes: [...microphone.notes, `rate: ${context.sampleRate} Hz`],
      unknown: microphone.unknown,
      play(sound) {
        if (sound === null) return player?.play(null, 0);
        const index = outputOf(sound, channels, options);
        if (isTrouble(index)) return ending.end(index);
        player?.play(sound, index);
      },
      setGain: (gainDb) => player?.setGain(gainDb),
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

function outputOf(
  { channel }: LineSound,
  channels: number,
  { routes }: LineOptions,
): number | Trouble {
  const route = routeOutputs([channel], channels, channelOnly(channel, routes));
  return isTrouble(route) ? route : (route.get(channel) ?? 0);
}

function channelOnly(
  channel: LineSound['channel'],
  routes: LineOptions['routes'],
): NonNullable<LineOptions['routes']> {
  const output = routes?.[channel];
  return output === undefined ? {} : { [channel]: output };
}

function noChannels(): Trouble {
  return trouble(
    'no-output',
    'This output device has no channel to play on. Choose another output.',
  );
}
