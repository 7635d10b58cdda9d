import { useEffect, useState } from 'react';
import type { ScreenShaking } from '../worker/messages.ts';
import { useScreen, useWorkshop } from './context.ts';

/** It takes longer than a solve: it waits until nothing has been typed for so long [ms]. */
const QUIET = 600;

/** What shakes the frame of the newest answer; undefined while it is being worked out. */
export function useShaking(): ScreenShaking | undefined {
  const { solver, screen } = useWorkshop();
  const revision = useScreen(({ answer }) => answer?.revision);
  const isShown = useScreen((state) => state.solidShows === 'strength');
  const [found, setFound] = useState<{ readonly revision: number; readonly value: ScreenShaking }>();
  useEffect(() => {
    if (revision === undefined || !isShown) return;
    let isWanted = true;
    const timer = setTimeout(() => {
      solver
        .shaking(revision)
        .then((value) => {
          if (isWanted && value !== undefined) setFound({ revision, value });
        })
        .catch((error: Error) =>
          screen.setState({ trouble: `Vibration could not be worked out: ${error.message}` }),
        );
    }, QUIET);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [solver, screen, revision, isShown]);
  return found?.revision === revision ? found?.value : undefined;
}
