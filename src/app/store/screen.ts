import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Answer, ScreenIssue, UnitSystem } from '../worker/messages.ts';
import type { Schema } from './fields.ts';

/** Views in the order of the tabs; `numbers` has a tab of its own only on narrow screens. */
export const VIEWS = [
  'numbers',
  'side',
  'solid',
  'ladder',
  'sheets',
  'figures',
  'findings',
  'changes',
] as const;
export type ViewName = (typeof VIEWS)[number];

/** What the screen shows beside the file itself; nothing of it is saved with the build. */
export interface ScreenState {
  readonly view: ViewName;
  readonly units: UnitSystem;
  readonly schema?: Schema;
  /** The last good result; it stays while the file has errors. */
  readonly answer?: Answer;
  /** Errors of the file as it is now. */
  readonly issues: readonly ScreenIssue[];
  readonly isBusy: boolean;
  /** Something that went wrong outside the file, e.g. text that is no JSON. */
  readonly trouble?: string;
  /** Path text of the field that is worked on; parts of the drawings that belong to it are marked. */
  readonly selected?: string;
  /** Set when a field should be opened, scrolled to and focused; the number makes each wish new. */
  readonly wish?: { readonly path: string; readonly number: number };
  /** Path texts of open groups. */
  readonly opened: ReadonlySet<string>;
  readonly fieldSearch: string;
  /** Show the rider in the views. */
  readonly withRider: boolean;
  /** What the 3D view shows. */
  readonly solidShows: 'parts' | 'strength';
  /** Load case whose use is shown; '' is the worst of all. */
  readonly loadCase: string;
  /** Draw the frame as it moves under the load case. */
  readonly isMoved: boolean;
}

export type ScreenStore = StoreApi<ScreenState>;

export const createScreen = (start: Partial<ScreenState>): ScreenStore =>
  createStore<ScreenState>()(() => ({
    view: 'side',
    units: 'both',
    issues: [],
    isBusy: true,
    opened: new Set(['wheels', 'steering']),
    fieldSearch: '',
    withRider: true,
    solidShows: 'parts',
    loadCase: '',
    isMoved: false,
    ...start,
  }));
