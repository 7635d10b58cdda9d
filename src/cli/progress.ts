import type { Terminal } from './terminal.ts';

/** Work done within this is not worth a word [ms]. */
const QUIET_TIME = 500;
/** At most one line in this time [ms]. */
const LINE_TIME = 250;

/** Tells on stderr what is being done, once it takes longer than half a second. */
export function startProgress(terminal: Terminal): (what: string) => void {
  const start = terminal.now();
  let last = Number.NEGATIVE_INFINITY;
  return (what) => {
    const now = terminal.now();
    if (now - start < QUIET_TIME || now - last < LINE_TIME) return;
    last = now;
    terminal.err(`... ${what} (${((now - start) / 1000).toFixed(1)} s)\n`);
  };
}
