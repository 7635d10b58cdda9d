import type { Remote } from 'comlink';
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { BuildDocument, DocumentState } from '../store/document.ts';
import type { ScreenState, ScreenStore } from '../store/screen.ts';
import type { SolverApi } from '../worker/messages.ts';

/** What every view may use. */
export interface Workshop {
  readonly document: BuildDocument;
  readonly screen: ScreenStore;
  readonly solver: Remote<SolverApi>;
}

export const WorkshopContext = createContext<Workshop | undefined>(undefined);

export function useWorkshop(): Workshop {
  const workshop = useContext(WorkshopContext);
  if (!workshop) throw new Error('a view stands outside the workshop');
  return workshop;
}

export const useScreen = <T>(pick: (state: ScreenState) => T): T => useStore(useWorkshop().screen, pick);

export const useDocument = <T>(pick: (state: DocumentState) => T): T =>
  useStore(useWorkshop().document.store, pick);
