import { defineConfig } from 'vitest/config';
import { playwright } from '@vitest/browser-playwright';
import { keepOffline } from './vite-offline.ts';

/** Debian's Chromium; another path can be given in CHROMIUM. */
const executablePath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
const launchArgs = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--accept-lang=en-GB',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A microphone that beeps and is always allowed, for what needs no real sound. */
const fakeMicrophone = [
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
  '--autoplay-policy=no-user-gesture-required',
];

/** Journeys that play and capture real audio: one at a time, and nothing beside them. */
const live = 'tests/journey/live-*.test.ts';

export default defineConfig({
  base: './',
  plugins: [keepOffline()],
  build: { target: 'es2022' },
  worker: { format: 'es' },
  // Named here, so that a first run does not find them half way and load the page again.
  optimizeDeps: {
    include: [
      'd3',
      'fast-check',
      'fflate',
      'fft.js',
      'idb',
      'lit',
      'lit/decorators.js',
      'lit/directives/keyed.js',
      'lit/directives/repeat.js',
      'lit/directives/style-map.js',
      'standardized-audio-context',
      'valibot',
    ],
  },
  server: { host: '127.0.0.1', port: 5310 },
  preview: { host: '127.0.0.1', port: 5311 },
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/{dsp,src,published}/**/*.test.ts'],
          testTimeout: 120_000,
          maxWorkers: 2,
        },
      },
      {
        test: {
          name: 'journey',
          environment: 'node',
          include: ['tests/journey/**/*.test.ts'],
          exclude: [live],
          testTimeout: 300_000,
          hookTimeout: 300_000,
          maxWorkers: 2,
        },
      },
      {
        test: {
          name: 'live',
          environment: 'node',
          include: [live],
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/{components,browser}/**/*.test.ts'],
          setupFiles: ['tests/page-locale.ts'],
          testTimeout: 60_000,
          maxWorkers: 2,
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({
              launchOptions: { executablePath, args: [...launchArgs, ...fakeMicrophone] },
            }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
    ],
  },
});
