import { createRoot } from 'react-dom/client';
import { keep, recall } from './storage/browser.ts';
import { firstDemo } from './storage/demos.ts';
import { createDocument } from './store/document.ts';
import { followRoute } from './store/route.ts';
import { createScreen } from './store/screen.ts';
import './style/base.css';
import './style/layout.css';
import './style/fields.css';
import './style/views.css';
import { App } from './views/App.tsx';
import { WorkshopContext } from './views/context.ts';
import { followUndoKeys } from './views/undoKeys.ts';
import { keepSolved, startWorker } from './worker/client.ts';

/** Pause in editing after which the file is kept [ms]. */
const KEEP_PAUSE = 500;

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element "root"');

const last = recall(window.localStorage);
const start =
  last.state === 'found'
    ? { name: last.kept.name, file: last.kept.file }
    : { name: firstDemo.name, file: await firstDemo.load() };
const buildDocument = createDocument({ ...start, opened: 0 });
const screen = createScreen({
  ...(last.state === 'found' ? { units: last.kept.units } : {}),
  ...(last.state === 'unreadable'
    ? { trouble: `The last edits could not be read (${last.reason}); a demo is open instead.` }
    : {}),
});
const solver = startWorker(screen);
keepSolved(buildDocument, screen, solver);
followRoute(screen, window);
followUndoKeys(buildDocument, window);
keepLastEdits();
createRoot(root).render(
  <WorkshopContext value={{ document: buildDocument, screen, solver }}>
    <App />
  </WorkshopContext>,
);

function keepLastEdits(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const save = (): void => {
    timer = undefined;
    const { name, file } = buildDocument.store.getState();
    keep(window.localStorage, { name, file, units: screen.getState().units });
  };
  const soon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(save, KEEP_PAUSE);
  };
  buildDocument.store.subscribe(soon);
  screen.subscribe(({ units }, before) => {
    if (units !== before.units) soon();
  });
  window.addEventListener('pagehide', () => {
    if (timer !== undefined) save();
  });
}
