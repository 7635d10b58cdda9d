import { type Remote, wrap } from 'comlink';
import type { BuildDocument } from '../store/document.ts';
import type { Schema } from '../store/fields.ts';
import type { ScreenStore } from '../store/screen.ts';
import type { SolverApi } from './messages.ts';

/** Pause in typing after which the bike is solved again [ms]. */
const PAUSE = 120;

/** Starts the core in its worker; what ends the worker is told, as its answers would be waited for in vain. */
export function startWorker(screen: ScreenStore): Remote<SolverApi> {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('error', ({ message }) =>
    screen.setState({
      isBusy: false,
      trouble: `The solver stopped: ${message || 'it could not be loaded'}.`,
    }),
  );
  return wrap<SolverApi>(worker);
}

/**
 * Solves the document whenever it changes. One solve runs at a time and the newest file wins; while the file has
 * errors, the last good answer stays.
 */
export function keepSolved(document: BuildDocument, screen: ScreenStore, solver: Remote<SolverApi>): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isRunning = false;
  let isStale = false;

  const run = async (): Promise<void> => {
    if (isRunning) {
      isStale = true;
      return;
    }
    isRunning = true;
    const { file, opened } = document.store.getState();
    try {
      const reply = await solver.solve(file, { step: document.step(), opened });
      screen.setState(reply.ok ? { answer: reply.answer, issues: [] } : { issues: reply.issues });
    } catch (error) {
      screen.setState({ trouble: `The bike could not be solved: ${(error as Error).message}` });
    }
    isRunning = false;
    if (isStale) {
      isStale = false;
      void run();
    } else screen.setState({ isBusy: timer !== undefined });
  };

  const soon = (wait: number): void => {
    clearTimeout(timer);
    screen.setState({ isBusy: true });
    timer = setTimeout(() => {
      timer = undefined;
      void run();
    }, wait);
  };

  document.store.subscribe((state, before) => {
    const isOpened = state.opened !== before.opened;
    // A demo that is opened again is the very same file, and what was shown of it is gone.
    if (isOpened || state.file !== before.file) soon(isOpened ? 0 : PAUSE);
  });
  void solver.schema().then((schema) => screen.setState({ schema: schema as Schema }));
  soon(0);
}
