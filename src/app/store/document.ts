import { type TemporalState, temporal } from 'zundo';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Json, type JsonObject, type Path, without, withValue } from './json.ts';

/** The build file being edited. Opening another one is a step that can be undone as well. */
export interface DocumentState {
  readonly name: string;
  readonly file: JsonObject;
  /** Grows with each file opened, and goes back with it: what is shown "since opening" starts anew. */
  readonly opened: number;
}

export interface BuildDocument {
  readonly store: StoreApi<DocumentState> & { readonly temporal: StoreApi<TemporalState<DocumentState>> };
  readonly open: (name: string, file: JsonObject) => void;
  /**
   * Sets one value. Edits of one `session` (one visit to a field) are one step of undo, so that undo does not go
   * through every pause in typing.
   */
  readonly setValue: (path: Path, value: Json, session: string) => void;
  readonly remove: (path: Path) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Changes with every step that `what changed` should be compared across. */
  readonly step: () => number;
}

const MOST_STEPS = 200;

export function createDocument(start: DocumentState): BuildDocument {
  const store = createStore<DocumentState>()(temporal(() => start, { limit: MOST_STEPS }));
  let session: string | undefined;
  let steps = 0;
  const change = (next: Partial<DocumentState>, inSession?: string): void => {
    const isSame = inSession !== undefined && inSession === session;
    session = inSession;
    const history = store.temporal.getState();
    if (isSame) history.pause();
    else steps += 1;
    store.setState(next);
    if (isSame) history.resume();
  };
  const travel = (go: 'undo' | 'redo'): void => {
    session = undefined;
    steps += 1;
    store.temporal.getState()[go]();
  };
  return {
    store,
    open: (name, file) => change({ name, file, opened: store.getState().opened + 1 }),
    setValue: (path, value, inSession) =>
      change({ file: withValue(store.getState().file, path, value) as JsonObject }, inSession),
    remove: (path) => change({ file: without(store.getState().file, path) as JsonObject }),
    undo: () => travel('undo'),
    redo: () => travel('redo'),
    step: () => steps,
  };
}
