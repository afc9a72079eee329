import { createSoundLevelMeter, type SoundLevelMeter } from '../soundlevel/sound-level-meter';
import { hearListening } from './hear-listening';
import { hearPeriods } from './hear-periods';
import type { NoiseEar } from './noise-ear';
import type { NoiseAnswer, NoiseOrder, NoiseSetting } from './noise-orders';
import type { NoiseRequest } from './noise-state';
import { renderPeriod } from './render-period';

/** News so many times a second of heard audio. */
const newsRate = 8;

/** Does all the work of live noise, order by order; lives in a worker, or beside a test. */
export function createNoiseEngine(
  answer: (message: NoiseAnswer) => void,
): (order: NoiseOrder) => void {
  let setting: NoiseSetting | null = null;
  let meter: SoundLevelMeter | null = null;
  let ear: NoiseEar | null = null;
  let run = 0;
  let sinceNews = 0;

  const tell = (): void => {
    if (!ear || !meter || !setting) return;
    const aWeightedDb = meter.aWeightedDb();
    const heardSeconds = sinceNews / setting.sampleRate;
    sinceNews = 0;
    answer({
      kind: 'news',
      run,
      news: ear.news(),
      soundLevel: meter.read(),
      aWeightedDb,
      heardSeconds,
    });
  };
  const hear = (samples: Float32Array): void => {
    if (!setting || !meter) return;
    meter.push(samples);
    ear?.push(samples);
    sinceNews += samples.length;
    if (ear && sinceNews >= setting.sampleRate / newsRate) tell();
  };
  const begin = (request: NoiseRequest, number: number): void => {
    if (!setting) return;
    run = number;
    ear =
      request.kind === 'noise' ? hearPeriods(request, setting) : hearListening(request, setting);
  };
  return (order) => {
    switch (order.kind) {
      case 'open':
        setting = order.setting;
        meter = createSoundLevelMeter(setting.sampleRate, setting.soundLevel);
        return;
      case 'render': {
        if (!setting) return;
        ear = null;
        const period = renderPeriod(order.lowHz, order.highHz, setting.sampleRate).slice();
        return answer({ kind: 'period', period, run: order.run });
      }
      case 'begin':
        return begin(order.request, order.run);
      case 'gain':
        return ear?.setGain(order.gainDb);
      case 'show':
        ear?.show(order.request);
        return tell();
      case 'gap':
        return ear?.gap(order.frames);
      case 'block':
        return hear(order.samples);
    }
  };
}
