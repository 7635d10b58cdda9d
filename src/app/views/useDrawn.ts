import { useEffect, useRef, useState } from 'react';
import type { SolverApi } from '../worker/messages.ts';
import { useScreen, useWorkshop } from './context.ts';

type Ask<T> = (solver: Pick<SolverRemote, keyof SolverApi>, revision: number) => Promise<T | undefined>;
type SolverRemote = ReturnType<typeof useWorkshop>['solver'];

/** Something drawn of the newest answer; the last one stays until the next is there. `key` names what is asked for. */
export function useDrawn<T>(key: string, ask: Ask<T>): T | undefined {
  const { solver, screen } = useWorkshop();
  const revision = useScreen(({ answer }) => answer?.revision);
  const [drawn, setDrawn] = useState<{ readonly key: string; readonly value: T }>();
  const latest = useRef(ask);
  latest.current = ask;
  useEffect(() => {
    if (revision === undefined) return;
    let isWanted = true;
    latest
      .current(solver, revision)
      .then((value) => {
        if (isWanted && value !== undefined) setDrawn({ key, value });
      })
      .catch((error: Error) => screen.setState({ trouble: `This could not be drawn: ${error.message}` }));
    return () => {
      isWanted = false;
    };
  }, [solver, screen, revision, key]);
  return drawn?.key === key ? drawn.value : undefined;
}
