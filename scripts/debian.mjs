import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** Programs from Debian that the checks against the outside need, and how to see that they are there. */
const PACKAGES = [
  { name: 'chromium', present: () => existsSync('/usr/bin/chromium') },
  { name: 'poppler-utils', present: () => existsSync('/usr/bin/pdftoppm') },
  { name: 'python3-ezdxf', present: () => imports('ezdxf') },
  { name: 'python3-shapely', present: () => imports('shapely') },
  { name: 'python3-numpy', present: () => imports('numpy') },
  { name: 'calculix-ccx', present: () => existsSync('/usr/bin/ccx') },
];

/** Debian's own Python, whatever other stands first on the path: its packages are there. */
export const PYTHON = '/usr/bin/python3';

/**
 * Installs what is missing when that is possible. Gives the names still missing and a text that says what to do.
 */
export function installCheckPackages() {
  const missing = PACKAGES.filter((one) => !one.present()).map((one) => one.name);
  if (missing.length === 0) return { missing, advice: '' };
  const line = `apt-get update && apt-get install -y --no-install-recommends ${missing.join(' ')}`;
  const isRoot = process.getuid?.() === 0;
  if (!existsSync('/usr/bin/apt-get') || !isRoot) {
    return { missing, advice: `The checks need ${missing.join(', ')}. On Debian, as root: ${line}` };
  }
  process.stderr.write(`jigwright: installing ${missing.join(', ')} for the checks ...\n`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...args) => spawnSync('apt-get', args, { env, stdio: ['ignore', 2, 2] });
  apt('-q', 'update');
  apt('-q', '-o', 'DPkg::Lock::Timeout=300', 'install', '-y', '--no-install-recommends', ...missing);
  const still = PACKAGES.filter((one) => !one.present()).map((one) => one.name);
  const advice =
    still.length === 0
      ? ''
      : `apt-get could not install ${still.join(', ')}; is Debian's archive reachable? Try: ${line}`;
  return { missing: still, advice };
}

function imports(module) {
  return spawnSync(PYTHON, ['-c', `import ${module}`], { stdio: 'ignore' }).status === 0;
}
