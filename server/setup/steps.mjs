// What the set-up is made of. Node built-ins only; everything is said on standard error.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { findChromium } from './find-chromium.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

const say = (text) => void process.stderr.write(`${text}\n`);

function giveUp(text) {
  say(text);
  process.exit(1);
}

/** Runs a program with its output on standard error; true where it ended well. */
function run(command, args) {
  const { status, error } = spawnSync(command, args, { cwd: root, stdio: ['ignore', 2, 2] });
  if (error !== undefined) say(`${command}: ${error.message}`);
  return status === 0;
}

/** Every file at or below a path, in one order on every machine. */
function filesIn(path) {
  const whole = join(root, path);
  if (!existsSync(whole)) return [];
  const entries = readdirSync(whole, { withFileTypes: true, recursive: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** Does a piece of work unless its stamp says that it was done from the same files with the same Node. */
function once({ stamp, texts = [], files = [], work }) {
  const hash = createHash('sha256').update(`${process.version} ${process.arch}\n`);
  for (const text of texts) hash.update(`${text}\n`);
  for (const file of files)
    hash
      .update(`${file.slice(root.length)}\n`)
      .update(readFileSync(file))
      .update('\n');
  const digest = hash.digest('hex');
  const stampFile = join(root, stamp);
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === digest) return;
  work();
  mkdirSync(dirname(stampFile), { recursive: true });
  writeFileSync(stampFile, digest);
}

const lockFile = join(root, 'package-lock.json');

/** The parts of package.json that decide what is installed; its scripts do not. */
function wantedPackages() {
  const { dependencies, devDependencies, overrides, allowScripts } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8'),
  );
  return JSON.stringify({ dependencies, devDependencies, overrides, allowScripts });
}

/** Installs exactly what the lock file says. The stamp lives in node_modules: `npm ci` deletes both together. */
export function install() {
  once({
    stamp: 'node_modules/.setup-stamp',
    texts: [wantedPackages()],
    files: [lockFile],
    work() {
      say('Installing what the lock file says (about a minute the first time) …');
      const npm = process.env.npm_execpath;
      const [command, first] = npm === undefined ? ['npm', []] : [process.execPath, [npm]];
      if (!run(command, [...first, 'ci', '--include=dev'])) giveUp('npm ci failed; its message stands above.');
    },
  });
}

const vite = (config) =>
  run(process.execPath, ['node_modules/vite/bin/vite.js', 'build', '--logLevel', 'error', '--config', config]);

/** Kinds of file that are worth sending compressed. */
const TEXTS = new Set(['.html', '.js', '.css', '.svg', '.json', '.webmanifest']);

/** Builds the page with .br and .gz files beside its texts, and the server with the command line. */
export function build() {
  if (existsSync(join(root, 'web/vite.config.ts')))
    once({
      stamp: 'dist/web/.setup-stamp',
      files: [lockFile, ...['web', 'server/job', 'server/plan', 'server/language', 'server/setup'].flatMap(filesIn)],
      work() {
        say('Building the page …');
        if (!vite('web/vite.config.ts')) giveUp('The page could not be built; the message stands above.');
        for (const file of filesIn('dist/web').filter((name) => TEXTS.has(extname(name)))) {
          const content = readFileSync(file);
          writeFileSync(`${file}.br`, brotliCompressSync(content));
          writeFileSync(`${file}.gz`, gzipSync(content, { level: 9 }));
        }
      },
    });
  once({
    stamp: 'dist/server/.setup-stamp',
    files: [lockFile, ...['server', 'db'].flatMap(filesIn)],
    work() {
      say('Building the server …');
      if (!vite('server/setup/vite.config.ts')) giveUp('The server could not be built; the message stands above.');
    },
  });
}

/** Makes sure of a browser for the tests: as root on Debian it is installed, elsewhere the person is told how. */
export function browser() {
  if (findChromium() !== undefined) return;
  const debian = existsSync('/etc/debian_version') && process.getuid?.() === 0;
  if (debian && !process.env.CHROMIUM_PATH) {
    say('Installing Chromium for the browser tests …');
    const got =
      run('apt-get', ['update', '-q']) &&
      run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium']);
    if (got && findChromium() !== undefined) return;
  }
  giveUp('The browser tests need Chromium. Install it, or set CHROMIUM_PATH to where one stands.');
}
