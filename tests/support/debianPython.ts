import { spawnSync } from 'node:child_process';

/** Debian's own interpreter: packages from apt are found by it, not by another python3 that may come first on PATH. */
const INTERPRETER = '/usr/bin/python3';

/**
 * Runs a Python script with `input` as JSON on its standard input and reads JSON from its standard output.
 * Throws with the install line when the interpreter or `module` is absent: a check that can't run fails.
 */
export function runPython(
  script: string,
  input: unknown,
  needs: { module: string; debianPackage: string },
): unknown {
  const program = `import importlib.util, sys\nif importlib.util.find_spec('${needs.module}') is None: sys.exit(77)\n${script}`;
  const run = spawnSync(INTERPRETER, ['-c', program], {
    input: JSON.stringify(input),
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  if (run.error || run.status === 77) {
    throw new Error(`this check needs ${needs.module}: apt-get install ${needs.debianPackage}`);
  }
  if (run.status !== 0) throw new Error(`python3 failed: ${run.stderr}`);
  return JSON.parse(run.stdout);
}
