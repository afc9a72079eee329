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
/** What is to be ended with us. */
const running = new Set();

/**
 * Checks that pass or fail as a whole, and test suites that count their tests. In order; those of
 * one line run beside each other.
 */
const steps = [
  [check('types'), check('lint'), check('format')],
  [{ name: 'unit', minutes: 10, suite: true }],
  [{ name: 'browser', minutes: 8, suite: true }],
  [check('build')],
  [{ name: 'journey', minutes: 10, suite: true }],
  [{ name: 'live', minutes: 10, suite: true }],
];

function check(name) {
  return { name, minutes: 5, command: ['npm', ['run', '-s', name]] };
}

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
    running.add(end);
    const finish = (code) => {
      clearTimeout(late);
      running.delete(end);
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

function interrupted() {
  for (const end of running) end();
  process.exit(130);
}

/** Runs a step and says how it went. */
async function take(step) {
  const started = Date.now();
  const { passed, failed, detail } = await (step.suite ? runSuite(step) : runCheck(step));
  const seconds = Math.round((Date.now() - started) / 1000);
  const asCheck = failed === 0 ? 'passed' : 'failed';
  const counts = step.suite ? `${passed} passed, ${failed} failed` : asCheck;
  console.log(`${step.name.padEnd(8)} ${counts} (${seconds} s)`);
  if (detail !== '') console.log(detail.trim());
  return { passed, failed };
}

process.once('SIGINT', interrupted).once('SIGTERM', interrupted);
prepare();
mkdirSync(reports, { recursive: true });
const results = [];
for (const beside of steps) results.push(...(await Promise.all(beside.map(take))));
const sum = (which) => results.reduce((total, result) => total + result[which], 0);
console.log(`${sum('passed')} passed, ${sum('failed')} failed`);
process.exitCode = sum('failed') === 0 ? 0 : 1;
