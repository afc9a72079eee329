import { createBench } from '../src/session/create-bench';
import { openStore } from '../src/session/store';
import './patch/patch-stage';
import './plan/plan-stage';
import './probe/probe-stage';
import './propose/propose-stage';
import './prove/prove-stage';
import './shell/app';

/** Opens the bench and shows it. */
async function start(): Promise<void> {
  const app = document.createElement('ll-app');
  app.bench = await createBench(openStore());
  document.body.append(app);
}

start().catch((error: unknown) => {
  const why = error instanceof Error ? error.message : String(error);
  const sentence = document.createElement('p');
  sentence.setAttribute('role', 'alert');
  sentence.textContent = `Leadline could not start: ${why}. Reload the page; saved sessions are untouched.`;
  document.body.append(sentence);
});
