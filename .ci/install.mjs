// Installs the packages when a fresh clone has none, or when the lock file is newer than what is there.
// Node's own modules only: nothing else exists yet when this runs.
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const time = (file) => statSync(`${root}${file}`, { throwIfNoEntry: false })?.mtimeMs ?? 0;

if (time('node_modules/.package-lock.json') < time('package-lock.json')) {
  console.log('Installing packages …');
  const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (status !== 0) {
    console.error('npm ci failed: see above. It needs the npm registry once; after that everything runs offline.');
    process.exit(1);
  }
}
