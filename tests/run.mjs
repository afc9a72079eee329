// What `npm test` runs: every check of the project, one after another, with one line at the end.
// Nothing runs beside the journeys: they play and capture real audio.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { prepare } from './prepare.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const reports = path.join(root, 'tests/.out');
const npx = (...words) => ['npx', ['--no-install', ...words]];

/** Checks that pass or fail as a whole, and test suites that count their tests. In order. */
const steps = [
  { name: 'types', minutes: 5, command: ['npm', ['run', '-s', 'types']] },
  { name: 'lint', minutes: 5, command: ['npm', ['run', '-s', 'lint']] },
  { name: 'format', minutes: 5, command: ['npm', ['run', '-s', 'format']] },
  { name: 'unit', minutes: 8, suite: true },
  { name: 'browser', minutes: 5, suite: true },
  { name: 'build', minutes: 3, command: ['npm', ['run', '-s', 'build']] },
  { name: 'journey', minutes: 12, suite: true },
];

/** Runs a command and gives its exit code and all it said; ends it after `minutes`. */
function run([command, args], minutes) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: root,
      detached: true,
      env: { ...process.env, CI: '1' },
    });
    let output = '';
    const listen = (data) => (output += data);
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    const end = () => process.kill(-child.pid, 'SIGKILL');
    const late = setTimeout(() => {
      output += `\nended after ${minutes} minutes`;
      end();
    }, minutes * 60_000);
    const interrupted = () => {
      end();
      process.exit(130);
    };
    process.once('SIGINT', interrupted).once('SIGTERM', interrupted);
    const finish = (code) => {
      clearTimeout(late);
      process.removeListener('SIGINT', interrupted).removeListener('SIGTERM', interrupted);
      resolve({ code, output });
    };
    child.once('error', (error) => {
      output += error.message;
      finish(1);
    });
    child.once('close', (code) => finish(code ?? 1));
  });
}

/** A check counts as one. */
async function runCheck({ command, minutes }) {
  const { code, output } = await run(command, minutes);
  return code === 0
    ? { passed: 1, failed: 0, detail: '' }
    : { passed: 0, failed: 1, detail: output };
}

/** A suite counts its tests; a file that does not load, or an error outside all tests, is one. */
async function runSuite({ name, minutes }) {
  const report = path.join(reports, `${name}.json`);
  rmSync(report, { force: true });
  const command = npx(
    'vitest',
    'run',
    '--project',
    name,
    '--passWithNoTests',
    '--reporter=json',
    `--outputFile=${report}`,
  );
  const { code, output } = await run(command, minutes);
  if (!existsSync(report))
    return { passed: 0, failed: code === 0 ? 0 : 1, detail: code === 0 ? '' : output };
  const result = JSON.parse(readFileSync(report, 'utf8'));
  const details = [];
  let failed = 0;
  for (const file of result.testResults) {
    const broken = file.assertionResults.filter((test) => test.status === 'failed');
    for (const test of broken) details.push(`${test.fullName}\n${test.failureMessages.join('\n')}`);
    if (broken.length === 0 && file.status === 'failed') {
      details.push(`${path.relative(root, file.name)}\n${file.message}`);
    }
    failed += Math.max(broken.length, file.status === 'failed' ? 1 : 0);
  }
  if (failed === 0 && code !== 0) {
    failed = 1;
    details.push(output);
  }
  return { passed: result.numPassedTests, failed, detail: details.join('\n\n') };
}

prepare();
mkdirSync(reports, { recursive: true });
const total = { passed: 0, failed: 0 };
for (const step of steps) {
  const started = Date.now();
  const { passed, failed, detail } = await (step.suite ? runSuite(step) : runCheck(step));
  total.passed += passed;
  total.failed += failed;
  const seconds = Math.round((Date.now() - started) / 1000);
  const counts = step.suite
    ? `${passed} passed, ${failed} failed`
    : failed === 0
      ? 'passed'
      : 'failed';
  console.log(`${step.name.padEnd(8)} ${counts} (${seconds} s)`);
  if (detail !== '') console.log(detail.trim());
}
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed === 0 ? 0 : 1;
