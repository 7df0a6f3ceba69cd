// Installs exactly what the lock file says, and skips that when it is already done. Node built-ins only: this
// runs before node_modules exists. Everything it says goes to standard error, so that piped output stays clean.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** The stamp lives inside node_modules: `npm ci` deletes that folder, so the stamp cannot outlive it. */
const stampFile = join(root, 'node_modules', '.setup-stamp');
const hash = createHash('sha256').update(process.version).update(process.arch);
for (const name of ['package.json', 'package-lock.json']) hash.update(readFileSync(join(root, name)));
const stamp = hash.digest('hex');

if (!existsSync(stampFile) || readFileSync(stampFile, 'utf8') !== stamp) {
  process.stderr.write('Installing what the lock file says (about a minute the first time) …\n');
  const npm = process.env.npm_execpath;
  const [command, first] = npm === undefined ? ['npm', []] : [process.execPath, [npm]];
  const result = spawnSync(command, [...first, 'ci', '--include=dev'], { cwd: root, stdio: ['ignore', 2, 2] });
  if (result.status !== 0) {
    process.stderr.write('npm ci failed; its message stands above.\n');
    process.exit(1);
  }
  writeFileSync(stampFile, stamp);
}
