import type { IAudioContext } from 'standardized-audio-context';

/**
 * What standardized-audio-context (25.3.77) does not offer of an AudioContext and some browsers
 * have: the choice of the output, its failures, and the count of underruns. The only place that
 * reaches behind it; tests/browser/native-context.test.ts tells when it need not any more.
 */
export interface NativeAbilities {
  /** Plays through the output with this id; false when the browser cannot choose. */
  setOutput(outputId: string): Promise<boolean>;
  /** Calls back when the output fails; returns the way to stop listening. */
  onFailure(listener: () => void): () => void;
  /** Underruns of the output so far; null when the browser does not count. */
  underruns(): { readonly count: number; readonly seconds: number } | null;
}

/** The abilities of the native object behind a context; each says so where there is none. */
export function nativeAbilities(context: IAudioContext): NativeAbilities {
  const held: unknown = Reflect.get(context, '_nativeAudioContext');
  const native = held instanceof EventTarget ? held : null;
  return {
    async setOutput(outputId) {
      const choose: unknown = native && Reflect.get(native, 'setSinkId');
      if (typeof choose !== 'function') return false;
      await Reflect.apply(choose, native, [outputId]);
      return true;
    },
    onFailure(listener) {
      native?.addEventListener('error', listener);
      return () => native?.removeEventListener('error', listener);
    },
    underruns() {
      const stats: unknown = native && Reflect.get(native, 'playbackStats');
      if (typeof stats !== 'object' || stats === null) return null;
      const count: unknown = Reflect.get(stats, 'underrunEvents');
      const seconds: unknown = Reflect.get(stats, 'underrunDuration');
      return typeof count === 'number' && typeof seconds === 'number' ? { count, seconds } : null;
    },
  };
}

/** Whether this browser lets a page choose the output; such browsers also list all outputs. */
export function canChooseOutput(): boolean {
  return typeof AudioContext === 'function' && 'setSinkId' in AudioContext.prototype;
}
