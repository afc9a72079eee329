import { followUpdates } from '../src/offline/follow-updates';
import type { Updates } from '../src/offline/updates';
import type { Bench } from '../src/session/bench';
import { createBench } from '../src/session/create-bench';
import { openStore } from '../src/session/store';
import './patch/patch-stage';
import './plan/plan-stage';
import './probe/probe-stage';
import './propose/propose-stage';
import './prove/prove-stage';
import './shell/app';
import { mayReload } from './shell/may-reload';

/** Opens the bench and shows it. */
async function start(): Promise<void> {
  const app = document.createElement('ll-app');
  app.bench = await createBench(openStore());
  app.updates = startUpdates(app.bench);
  document.body.append(app);
}

/** The built app is kept in the browser where that is allowed: on https and localhost. */
function startUpdates(bench: Bench): Updates | null {
  if (!import.meta.env.PROD || !isSecureContext || !('serviceWorker' in navigator)) return null;
  const worker = new URL('service-worker.js', document.baseURI).href;
  return followUpdates(navigator.serviceWorker, worker, () => {
    if (mayReload(bench.state)) location.reload();
  });
}

start().catch((error: unknown) => {
  const why = error instanceof Error ? error.message : String(error);
  const sentence = document.createElement('p');
  sentence.setAttribute('role', 'alert');
  sentence.textContent = `Leadline could not start: ${why}. Reload the page; saved sessions are untouched.`;
  document.body.append(sentence);
});
