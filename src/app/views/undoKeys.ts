import type { BuildDocument } from '../store/document.ts';

/** Ctrl+Z and Ctrl+Y (or Shift) for the whole file; inside a text the browser's own undo of typing comes first. */
export function followUndoKeys(document: BuildDocument, window: Window): void {
  window.addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
    const key = event.key.toLowerCase();
    if (key === 'z') (event.shiftKey ? document.redo : document.undo)();
    else if (key === 'y') document.redo();
    else return;
    event.preventDefault();
  });
}

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches('input[type=text], input[type=search], textarea');
