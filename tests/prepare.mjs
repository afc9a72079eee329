// Makes sure that the programs the tests lean on are there.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const works = (command, ...args) => spawnSync(command, args, { stdio: 'ignore' }).status === 0;

/** Debian's package for each program, and how to see that it is there. */
const needs = [
  { package: 'chromium', there: () => existsSync(process.env.CHROMIUM ?? '/usr/bin/chromium') },
  { package: 'pulseaudio', there: () => works('pulseaudio', '--version') },
  {
    package: 'pulseaudio-utils',
    there: () => works('pactl', '--version') && works('parec', '--version'),
  },
  {
    package: 'python3-scipy',
    there: () =>
      ['python3', '/usr/bin/python3'].some((python) => works(python, '-c', 'import scipy')),
  },
];

const missing = () => needs.filter((need) => !need.there()).map((need) => need.package);

/** Installs what is missing when this is root on Debian; otherwise says what to install and ends. */
export function prepare() {
  const wanted = missing();
  if (wanted.length === 0) return;
  if (process.getuid?.() === 0 && existsSync('/etc/debian_version')) {
    console.log(`installing ${wanted.join(', ')}`);
    const options = {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    };
    spawnSync('apt-get', ['update', '-qq'], options);
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...wanted], options);
  }
  const still = missing();
  if (still.length === 0) return;
  console.log(
    `The tests need ${still.join(', ')} (names of Debian's packages): install them and run npm test again.`,
  );
  process.exit(1);
}
