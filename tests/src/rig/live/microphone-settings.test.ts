import { describe, expect, it } from 'vitest';
import { judgeMicrophone } from '../../../../src/rig/live/microphone-settings';

const off = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };

describe('judgeMicrophone', () => {
  it('accepts a microphone with everything off and notes its rate and depth', () => {
    const facts = judgeMicrophone('Probe', { ...off, sampleRate: 48000, sampleSize: 16 });
    expect(facts).toEqual({
      notes: ['microphone: Probe', 'microphone rate: 48000 Hz', 'microphone depth: 16 bits'],
      unknown: [],
    });
  });

  it.each([
    ['echo cancelling', { ...off, echoCancellation: true }],
    ['echo cancelling', { ...off, echoCancellation: 'remote-only' }],
    ['noise suppression', { ...off, noiseSuppression: true }],
    ['automatic gain', { ...off, autoGainControl: true }],
    ['voice isolation', { ...off, voiceIsolation: true }],
  ])('names %s that is still on', (name, settings) => {
    const facts = judgeMicrophone('Probe', { ...settings, sampleRate: 48000 });
    expect(facts).toMatchObject({ trouble: 'processing-on' });
    expect(facts).toHaveProperty('sentence', expect.stringContaining(name));
  });

  it('takes what is absent as unknown, not as off', () => {
    expect(judgeMicrophone('Probe', { echoCancellation: false })).toMatchObject({
      unknown: [
        'noise suppression of the microphone',
        'automatic gain of the microphone',
        'rate of the microphone',
      ],
    });
  });

  it('refuses a headset at 16 kHz and takes 44.1 kHz', () => {
    const headset = judgeMicrophone('Headset', { ...off, sampleRate: 16000 });
    expect(headset).toMatchObject({ trouble: 'wrong-rate' });
    expect(headset).toHaveProperty('sentence', expect.stringContaining('16 kHz'));
    expect(judgeMicrophone('Probe', { ...off, sampleRate: 44100 })).not.toHaveProperty('trouble');
  });
});
